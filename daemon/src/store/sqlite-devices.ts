import type { DatabaseSync } from 'node:sqlite';
import type { Rights } from '@platewright/core/protocol/devices.ts';
import { maybe, type Row, text, transaction, whole } from './sqlite-rows.ts';
import type { CodeOutcome, StoredDevice } from './store.ts';

/** Tries that all pairing codes together stand: 5 of 40 bits is a chance of 4.5e-12. */
const CODE_TRIES = 5;

const COLUMNS = 'id, name, kind, origin, token_hash, paired_at, last_seen_at, revoked_at, athlete, access';

/** Devices and the pairing codes that make them, in a SQLite store. */
export function deviceTable(db: DatabaseSync) {
  const selectAll = db.prepare(`SELECT ${COLUMNS} FROM devices ORDER BY paired_at, id`);
  const selectByToken = db.prepare(`SELECT ${COLUMNS} FROM devices WHERE token_hash = ?`);
  const upsert = db.prepare(
    `INSERT INTO devices (${COLUMNS}) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
     ON CONFLICT (id) DO UPDATE SET
       name = excluded.name, last_seen_at = excluded.last_seen_at, revoked_at = excluded.revoked_at,
       athlete = excluded.athlete, access = excluded.access`,
  );
  const insertCode = db.prepare(
    'INSERT OR REPLACE INTO codes (hash, expires_at, tries_left, athlete, access) VALUES (?, ?, ?, ?, ?)',
  );
  const dropStale = db.prepare('DELETE FROM codes WHERE expires_at <= ? OR tries_left <= 0');
  const countCodes = db.prepare('SELECT count(*) AS n FROM codes');
  const dropCode = db.prepare('DELETE FROM codes WHERE hash = ? RETURNING athlete, access');
  const countTry = db.prepare('UPDATE codes SET tries_left = tries_left - 1');

  return {
    all: (): StoredDevice[] => selectAll.all().map(readRow),

    byToken(tokenHash: string): StoredDevice | null {
      const row = selectByToken.get(tokenHash);
      return row === undefined ? null : readRow(row);
    },

    put(device: StoredDevice): void {
      const { id, name, kind, origin, tokenHash, pairedAt, lastSeenAt, revokedAt, rights } = device;
      const { athlete, access } = rights;
      upsert.run(id, name, kind, origin, tokenHash, pairedAt, lastSeenAt, revokedAt, athlete, access);
    },

    putCode(hash: string, expiresAt: number, { athlete, access }: Rights): void {
      insertCode.run(hash, expiresAt, CODE_TRIES, athlete, access);
    },

    takeCode(hash: string, now: number): CodeOutcome {
      return transaction(db, () => {
        dropStale.run(now);
        if (Number(countCodes.get()?.n) === 0) return 'none';
        const right = dropCode.get(hash);
        if (right !== undefined) return readRights(right);
        countTry.run();
        return 'wrong';
      });
    },
  };
}

function readRow(row: Row): StoredDevice {
  return {
    id: text(row, 'id'),
    name: text(row, 'name'),
    kind: text(row, 'kind') === 'extension' ? 'extension' : 'dashboard',
    origin: maybe(row, 'origin', text),
    tokenHash: text(row, 'token_hash'),
    pairedAt: whole(row, 'paired_at'),
    lastSeenAt: maybe(row, 'last_seen_at', whole),
    revokedAt: maybe(row, 'revoked_at', whole),
    rights: readRights(row),
  };
}

/** Less rather than more when the column is not as it was written. */
function readRights(row: Row): Rights {
  return {
    athlete: maybe(row, 'athlete', text),
    access: text(row, 'access') === 'write' ? 'write' : 'read',
  };
}
