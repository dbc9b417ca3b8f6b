import type { DatabaseSync } from 'node:sqlite';
import type { Rights } from '@platewright/core/protocol/devices.ts';
import { CODE_COLUMNS, CODE_TRIES, codeValues, readCode, tryCode, waitingAt } from './code-row.ts';
import { DEVICE_COLUMNS, deviceValues, readDevice } from './device-row.ts';
import { transaction } from './sqlite-transaction.ts';
import type { CodeOutcome, StoredDevice } from './store.ts';

/** Devices and the pairing codes that make them, in a SQLite store. */
export function deviceTable(db: DatabaseSync) {
  const selectAll = db.prepare(`SELECT ${DEVICE_COLUMNS} FROM devices ORDER BY paired_at, id`);
  const selectByToken = db.prepare(`SELECT ${DEVICE_COLUMNS} FROM devices WHERE token_hash = ?`);
  const upsert = db.prepare(
    `INSERT INTO devices (${DEVICE_COLUMNS}) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
     ON CONFLICT (id) DO UPDATE SET (${DEVICE_COLUMNS}) = (excluded.id, excluded.name, excluded.kind,
       excluded.origin, excluded.token_hash, excluded.paired_at, excluded.last_seen_at, excluded.revoked_at,
       excluded.athlete, excluded.access, excluded.checksum) WHERE devices.revoked_at IS NULL`,
  );
  const selectCodes = db.prepare(`SELECT ${CODE_COLUMNS} FROM codes`);
  const insertCode = db.prepare(`INSERT OR REPLACE INTO codes (${CODE_COLUMNS}) VALUES (?, ?, ?, ?, ?, ?)`);
  const dropCodes = db.prepare('DELETE FROM codes');

  return {
    all: (): StoredDevice[] => selectAll.all().map(readDevice),

    byToken(tokenHash: string): StoredDevice | null {
      const row = selectByToken.get(tokenHash);
      return row === undefined ? null : readDevice(row);
    },

    put(device: StoredDevice): void {
      upsert.run(...deviceValues(device));
    },

    putCode(hash: string, expiresAt: number, rights: Rights): void {
      insertCode.run(...codeValues({ hash, expiresAt, triesLeft: CODE_TRIES, rights }));
    },

    waitingCodes: (now: number): string[] =>
      waitingAt(now, selectCodes.all().map(readCode)).map(({ hash }) => hash),

    takeCode(hash: string | null, now: number): CodeOutcome {
      return transaction(db, () => {
        const { outcome, left } = tryCode(selectCodes.all().map(readCode), hash, now);
        dropCodes.run();
        for (const code of left) insertCode.run(...codeValues(code));
        return outcome;
      });
    },
  };
}
