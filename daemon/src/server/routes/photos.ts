import { readRecord } from '@platewright/core/changes/read.ts';
import { pictureType } from '@platewright/core/records/photo.ts';
import { Hono } from 'hono';
import { getBytes, nameOf, putBytes } from '../../keep/bytes.ts';
import type { Store } from '../../store/store.ts';
import { StoreTrouble } from '../../store/trouble.ts';
import { requireDevice } from '../auth.ts';
import { invalid, query } from '../body.ts';
import type { Deps, Env } from '../deps.ts';
import { ProblemError } from '../problem.ts';
import { photoQuerySchema } from '../queries.ts';
import { athleteToRead, demandWrite } from '../rights.ts';

/** Pictures of photos, in and out, each under its SHA-256; what they are of stands in records. */
export function photoRoutes(deps: Deps) {
  const { store, files } = deps;
  return new Hono<Env>()
    .get('/photos/:sha256', requireDevice(deps), query(photoQuerySchema), async (c) => {
      const { athlete } = c.req.valid('query');
      athleteToRead(c.get('device').rights, athlete);
      const name = c.req.param('sha256');
      const content = (await isPhotoOf(store, athlete, name)) ? soundBytes(files, name) : null;
      const type = content === null ? null : pictureType(content);
      if (content === null || type === null) throw noPhoto();
      // Opened by itself it is a page of nobody, which runs and loads nothing.
      c.header('content-security-policy', "default-src 'none'; frame-ancestors 'none'; sandbox");
      c.header('content-disposition', 'inline; filename="photo"');
      return c.body(content, 200, { 'content-type': type });
    })
    .put('/photos/:sha256', requireDevice(deps), query(photoQuerySchema), async (c) => {
      demandWrite(c.get('device').rights, c.req.valid('query').athlete);
      const content = new Uint8Array(await c.req.arrayBuffer());
      const type = pictureType(content);
      if (type === null || c.req.header('content-type') !== type) throw noPicture();
      if (nameOf(content) !== c.req.param('sha256'))
        throw invalid([{ pointer: '', detail: 'the address does not end in the SHA-256 of the picture' }]);
      putBytes(files, content);
      return c.body(null, 204);
    });
}

/** Whether a photo of this athlete, not removed, has this file: without that, who may see one athlete could ask for all files. */
async function isPhotoOf(store: Store, athlete: string, name: string): Promise<boolean> {
  const photos = await store.records({ kind: 'photo', athlete });
  return photos.some((record) => readRecord('photo', record)?.sha256 === name);
}

/** Null also for a file that is not as it was written; `npx platewright verify` names it. */
function soundBytes(folder: string, name: string) {
  try {
    return getBytes(folder, name);
  } catch (error) {
    if (error instanceof StoreTrouble) return null;
    throw error;
  }
}

function noPhoto(): ProblemError {
  return new ProblemError(404, 'no-photo', {
    detail:
      'There is no such photo of this athlete, or its file is missing or damaged: npx platewright verify says so, where the daemon runs.',
  });
}

function noPicture(): ProblemError {
  return new ProblemError(415, 'no-picture', {
    detail:
      'A photo is a JPEG, PNG or WebP picture, sent as image/jpeg, image/png or image/webp, whichever it is.',
  });
}
