import type { StoredRecord } from '@platewright/core/changes/merge.ts';
import { readRecord } from '@platewright/core/changes/read.ts';
import { StoreTrouble } from '../store/trouble.ts';
import { getBytes } from './bytes.ts';

/** Photos whose file is missing from a folder, or is not as it was written: a line each. */
export function photoFaults(photos: readonly StoredRecord[], folder: string): string[] {
  return photos
    .map((record) => readRecord('photo', record))
    .filter((photo) => photo !== null)
    .flatMap(({ id, athlete, sha256 }) => {
      const fault = faultOf(folder, sha256);
      return fault === null ? [] : [`photo ${id} of athlete ${athlete}: ${fault}`];
    });
}

/** What to do about faults of photos in a folder of files. */
export function photoAdvice(folder: string): string {
  return `Copy into ${folder} what the folder bytes beside a backup holds. What is in no backup is lost: remove that photo.`;
}

function faultOf(folder: string, sha256: string): string | null {
  try {
    return getBytes(folder, sha256) === null ? 'its file is missing' : null;
  } catch (error) {
    if (error instanceof StoreTrouble) return error.what;
    throw error;
  }
}
