import type { Photo } from '@platewright/core/records/kinds.ts';
import { formatDay, formatDayOfYear } from '@platewright/core/ui/format-date.ts';
import { formatBodyMass } from '@platewright/core/units/mass.ts';
import type { BodyView } from '@platewright/core/views/body-types.ts';
import { useState } from 'preact/hooks';
import { removal } from '../../api/edits.ts';
import { pictureUrl } from '../../api/photos.ts';
import { useNotice } from '../../state/notice.tsx';

/** A photo with its date, its note, and where the bodyweight line stood. */
export function PhotoFigure({ body, photo }: { body: BodyView; photo: Photo }) {
  const { act } = useNotice();
  const [missing, setMissing] = useState(false);
  const { id, athlete, date, note } = photo;
  const line = body.points.find((point) => point.date === date)?.lineKg.mean;
  const remove = () =>
    act([removal('photo', athlete, id, true)], `Removed the photo of ${formatDay(date)}.`, [
      removal('photo', athlete, id, false),
    ]);
  return (
    <figure class="photo">
      {missing ? (
        <p class="problem">Its file is not where it should be: “npx platewright verify” says more.</p>
      ) : (
        <img
          src={pictureUrl(photo)}
          alt={[formatDayOfYear(date), note].filter(Boolean).join(', ')}
          onError={() => setMissing(true)}
        />
      )}
      <figcaption>
        <span>
          <b>{formatDayOfYear(date)}</b>
          {line !== undefined && ` · ${formatBodyMass(line, body.units.mass)}`}
          {note && <span class="soft break block">{note}</span>}
        </span>
        <button type="button" class="link small" onClick={() => void remove()}>
          Remove<span class="unseen"> the photo of {formatDay(date)}</span>
        </button>
      </figcaption>
    </figure>
  );
}
