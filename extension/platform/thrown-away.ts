import { askWorker } from './messages.ts';
import { readPairing } from './pairing.ts';

/** Has the worker fill a replica again that the browser threw away: to a page it looks as if nothing was ever paired. */
export async function fillIfThrownAway(): Promise<void> {
  if ((await readPairing())?.joined) await askWorker('sync', null);
}
