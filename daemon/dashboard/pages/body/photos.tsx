import type { BodyView } from '@platewright/core/views/body-types.ts';
import { readPhotos } from '../../api/photos.ts';
import { Shown } from '../../shell/shown.tsx';
import { useLoaded } from '../../state/use-view.ts';
import { PhotoForm } from './photo-form.tsx';
import { PhotoPair } from './photo-pair.tsx';

/** Photos of the athlete, and the way to add one. */
export function Photos({ body }: { body: BodyView }) {
  const loaded = useLoaded(`photos ${body.athlete}`, () => readPhotos(body.athlete));
  return (
    <>
      <PhotoForm body={body} />
      <Shown loaded={loaded}>{(photos) => <PhotoPair body={body} photos={photos} />}</Shown>
    </>
  );
}
