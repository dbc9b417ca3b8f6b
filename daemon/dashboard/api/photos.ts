import { readRecord } from '@platewright/core/changes/read.ts';
import { recordsResponseSchema } from '@platewright/core/protocol/records.ts';
import type { Photo } from '@platewright/core/records/kinds.ts';
import { oldestFirst } from '@platewright/core/views/order.ts';
import { get, put } from './request.ts';

/** Photos of an athlete, oldest first. */
export async function readPhotos(athlete: string): Promise<readonly Photo[]> {
  const query = new URLSearchParams({ athlete, kind: 'photo' });
  const { records } = await get(`records?${query}`, recordsResponseSchema);
  return records
    .map((record) => readRecord('photo', { ...record, clocks: {} }))
    .filter((photo) => photo !== null)
    .toSorted(oldestFirst);
}

/** Address of a photo's picture. */
export function pictureUrl({ sha256, athlete }: Pick<Photo, 'sha256' | 'athlete'>): string {
  return new URL(`v1/${pathOf(sha256, athlete)}`, document.baseURI).href;
}

/** Sends a picture, and gives its SHA-256. It is kept for a day at least; a record must name it by then. */
export async function sendPicture(athlete: string, picture: Blob): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', await picture.arrayBuffer()));
  const sha256 = Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('');
  await put(pathOf(sha256, athlete), picture);
  return sha256;
}

function pathOf(sha256: string, athlete: string): string {
  return `photos/${sha256}?${new URLSearchParams({ athlete })}`;
}
