import { readRecord } from '@platewright/core/changes/read.ts';
import type { Store } from '../store/store.ts';
import { StoreTrouble } from '../store/trouble.ts';
import { getBytes } from './bytes.ts';

/** Photos whose content is missing from the folder of files, or is not as it was written: a line each. */
export async function photoFaults(store: Store, folder: string): Promise<string[]> {
  const photos = await store.records({ kind: 'photo' });
  return photos
    .map((record) => readRecord('photo', record))
    .filter((photo) => photo !== null)
    .flatMap(({ id, athlete, sha256 }) => {
      const fault = faultOf(folder, sha256);
      return fault === null ? [] : [`photo ${id} of athlete ${athlete}: ${fault}`];
    });
}

function faultOf(folder: string, sha256: string): string | null {
  try {
    return getBytes(folder, sha256) === null ? 'its file is missing' : null;
  } catch (error) {
    if (error instanceof StoreTrouble) return error.what;
    throw error;
  }
}
