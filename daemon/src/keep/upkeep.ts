import { type BackedUp, listBackups, makeBackup, originOf } from './backup.ts';
import { dropPhotos } from './drop-photos.ts';
import { foldOld } from './fold-old.ts';

/** A day lost is what a person can type again (common practice, no source). */
const BACKUP_MS = 86_400_000;
/** How often it is looked whether a backup is due; a laptop that sleeps at night still gets its own. */
const LOOK_MS = 3_600_000;
/** Left alone, so that a start is quick. */
const FIRST_LOOK_MS = 60_000;

interface Upkeep extends BackedUp {
  /** ms since 1970. */
  now(): number;
  /** Told what kept a backup from being made; the next look tries again. */
  onTrouble(error: unknown): void;
}

/**
 * Makes a backup when the last one is a day old, removes files that nothing names, and folds what is old; nothing of a
 * store that is damaged.
 */
export async function upkeep({ now, ...of }: Omit<Upkeep, 'onTrouble'>): Promise<void> {
  const { store, backups } = of;
  const [newest] = listBackups(backups, now(), await originOf(store));
  // A backup from the future was made under a wrong clock, and is as good a reason for another one.
  const isDue = newest === undefined || newest.at > now() || now() - newest.at >= BACKUP_MS;
  if (!isDue || store.trouble() !== null || (await store.lastSeq()) === 0) return;
  await makeBackup(of, now());
  await dropPhotos(of, now());
  await foldOld(store, now());
}

/** Does the upkeep of a store from now on, until `stop`, which waits for what is under way. */
export function startUpkeep({ onTrouble, ...of }: Upkeep): { stop(): Promise<void> } {
  let running: Promise<void> = Promise.resolve();
  const look = () => {
    running = upkeep(of).catch(onTrouble);
  };
  const first = setTimeout(look, FIRST_LOOK_MS).unref();
  const next = setInterval(look, LOOK_MS).unref();
  return {
    async stop() {
      clearTimeout(first);
      clearInterval(next);
      await running;
    },
  };
}
