import type { Photo } from '@platewright/core/records/kinds.ts';
import { formatDay, formatDayOfYear } from '@platewright/core/ui/format-date.ts';
import { formatBodyMass } from '@platewright/core/units/mass.ts';
import type { BodyView } from '@platewright/core/views/body-types.ts';
import { useState } from 'preact/hooks';
import { pictureUrl } from '../../api/photos.ts';
import { Remove } from '../../shell/remove.tsx';

/** A photo with its date, its note, and where the bodyweight line stood. */
export function PhotoFigure({ body, photo }: { body: BodyView; photo: Photo }) {
  const [missing, setMissing] = useState(false);
  const { id, date, note } = photo;
  const line = body.points.find((point) => point.date === date)?.lineKg.mean;
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
        <Remove kind="photo" id={id} what={`the photo of ${formatDay(date)}`} />
      </figcaption>
    </figure>
  );
}
