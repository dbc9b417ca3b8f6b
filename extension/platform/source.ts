import { uuidV7 } from '@platewright/core/records/uuid.ts';
import type { Source } from '../replica/edit.ts';

/** The browser's clock and random numbers. */
export const source: Source = {
  now: () => Date.now(),
  newId: () => uuidV7(Date.now(), crypto.getRandomValues(new Uint8Array(10))),
};
