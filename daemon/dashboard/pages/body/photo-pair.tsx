import type { Photo } from '@platewright/core/records/kinds.ts';
import { formatDayOfYear } from '@platewright/core/ui/format-date.ts';
import type { BodyView } from '@platewright/core/views/body-types.ts';
import { useState } from 'preact/hooks';
import { Select } from '../../forms/select.tsx';
import { PhotoFigure } from './photo-figure.tsx';

/** Two photos beside each other: the first and the newest, unless others are chosen. */
export function PhotoPair({ body, photos }: { body: BodyView; photos: readonly Photo[] }) {
  const [chosen, setChosen] = useState<{ Left?: string; Right?: string }>({});
  const [first, newest] = [photos[0], photos.at(-1)];
  if (!first || !newest) {
    return (
      <p class="soft">
        A photo every few weeks shows what the scale can’t: same light, same place, same pose, same hour. Two
        of them stand here beside each other.
      </p>
    );
  }
  if (first === newest) return <PhotoFigure key={first.id} body={body} photo={first} />;
  const shown = (id: string | undefined, otherwise: Photo) =>
    photos.find((photo) => photo.id === id) ?? otherwise;
  const sides = [
    { side: 'Left', photo: shown(chosen.Left, first) },
    { side: 'Right', photo: shown(chosen.Right, newest) },
  ] as const;
  const options = photos.map(({ id, date, note }) => ({
    value: id,
    label: [formatDayOfYear(date), note].filter(Boolean).join(', '),
  }));
  return (
    <div class="photos">
      {sides.map(({ side, photo }) => (
        <div key={side}>
          <Select
            label={`${side} photo`}
            value={photo.id}
            options={options}
            onChoice={(id) => setChosen({ ...chosen, [side]: id })}
          />
          <PhotoFigure key={photo.id} body={body} photo={photo} />
        </div>
      ))}
    </div>
  );
}
