import type { Rights } from '@platewright/core/protocol/devices.ts';
import type { Pool, PoolClient } from 'pg';
import {
  CODE_COLUMNS,
  CODE_TRIES,
  type CodeRow,
  codeValues,
  readCode,
  tryCode,
  waitingAt,
} from './code-row.ts';
import { DEVICE_COLUMNS, deviceValues, readDevice } from './device-row.ts';
import { writing } from './postgres-pool.ts';
import type { CodeOutcome, StoredDevice } from './store.ts';

const SELECT = `SELECT ${DEVICE_COLUMNS} FROM devices`;
const SELECT_CODES = `SELECT ${CODE_COLUMNS} FROM codes`;

/** Devices and the pairing codes that make them, in a PostgreSQL store. */
export function postgresDevices(pool: Pool) {
  async function insertCode(client: Pool | PoolClient, code: CodeRow): Promise<void> {
    await client.query(
      `INSERT INTO codes (${CODE_COLUMNS}) VALUES ($1, $2, $3, $4, $5, $6)
       ON CONFLICT (hash) DO UPDATE SET expires_at = excluded.expires_at, tries_left = excluded.tries_left,
         athlete = excluded.athlete, access = excluded.access, checksum = excluded.checksum`,
      [...codeValues(code)],
    );
  }

  return {
    async all(): Promise<StoredDevice[]> {
      return (await pool.query(`${SELECT} ORDER BY paired_at, id`)).rows.map(readDevice);
    },

    async byToken(tokenHash: string): Promise<StoredDevice | null> {
      const { rows } = await pool.query(`${SELECT} WHERE token_hash = $1`, [tokenHash]);
      return rows[0] === undefined ? null : readDevice(rows[0]);
    },

    async put(device: StoredDevice): Promise<void> {
      await pool.query(
        `INSERT INTO devices (${DEVICE_COLUMNS}) VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11)
         ON CONFLICT (id) DO UPDATE SET name = excluded.name, kind = excluded.kind, origin = excluded.origin,
           token_hash = excluded.token_hash, paired_at = excluded.paired_at, last_seen_at = excluded.last_seen_at,
           revoked_at = excluded.revoked_at, athlete = excluded.athlete, access = excluded.access,
           checksum = excluded.checksum WHERE devices.revoked_at IS NULL`,
        [...deviceValues(device)],
      );
    },

    putCode(hash: string, expiresAt: number, rights: Rights): Promise<void> {
      return insertCode(pool, { hash, expiresAt, triesLeft: CODE_TRIES, rights });
    },

    async waitingCodes(now: number): Promise<string[]> {
      const { rows } = await pool.query(SELECT_CODES);
      return waitingAt(now, rows.map(readCode)).map(({ hash }) => hash);
    },

    takeCode(hash: string | null, now: number): Promise<CodeOutcome> {
      return writing(pool, async (client) => {
        await client.query('LOCK TABLE codes IN EXCLUSIVE MODE');
        const { rows } = await client.query(SELECT_CODES);
        const { outcome, left } = tryCode(rows.map(readCode), hash, now);
        await client.query('DELETE FROM codes');
        for (const code of left) await insertCode(client, code);
        return outcome;
      });
    },
  };
}
