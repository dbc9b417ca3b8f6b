import { randomBytes } from 'node:crypto';
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { DatabaseError, type Pool, type PoolClient } from 'pg';
import { createGuard } from './guard.ts';
import { copyToFile } from './postgres-backup.ts';
import { postgresDevices } from './postgres-devices.ts';
import { appendToLog, changesAfter, foldLog, logMark, readLogHead } from './postgres-log.ts';
import { openPool, reading, writing } from './postgres-pool.ts';
import { findRecords, recordPage, recordsAt } from './postgres-records.ts';
import { demandBoundRole } from './postgres-role.ts';
import { migratePostgres } from './postgres-schema.ts';
import { explainPostgres } from './postgres-trouble.ts';
import { postgresFaults } from './postgres-verify.ts';
import { placeKey } from './record-row.ts';
import { ID_SETTING, readSetting, SETTING_COLUMNS, settingValues } from './setting-row.ts';
import { LOCK_FILE } from './sqlite.ts';
import { takeLock } from './sqlite-lock.ts';
import type { Store } from './store.ts';
import { StoreTrouble } from './trouble.ts';

/** Held by the owner for as long as its connection lasts. */
const OWNER_LOCK = 0x504c5753;
/** How long the lock of an owner before is waited for, ms. */
const OWNER_WAIT_MS = 2000;
/** SQLSTATE of a lock that was waited for in vain. */
const LOCK_NOT_AVAILABLE = '55P03';

interface PostgresPlace {
  /** `postgres://user@host/database`. */
  address: string;
  /** Folder of what is beside the store; its lock tells other commands that a daemon runs. */
  folder: string;
  role: 'owner' | 'guest';
}

/** The store in a PostgreSQL database, made when it is not there. Throws StoreTrouble. */
export async function openPostgresStore({ address, folder, role }: PostgresPlace): Promise<Store> {
  const pool = openPool(address);
  const lock = role === 'owner' ? lockFolder(folder) : { release() {} };
  try {
    const client = await pool.connect();
    try {
      await demandBoundRole(client);
      await migratePostgres(client, role);
      if (role === 'owner') await own(client);
    } catch (error) {
      client.release(true);
      throw error;
    }
    if (role === 'guest') client.release();
    return storeOf(pool, await storeId(pool), async () => {
      if (role === 'owner') client.release(true);
      await pool.end();
      lock.release();
    });
  } catch (error) {
    await pool.end();
    lock.release();
    throw explainPostgres(error);
  }
}

function storeOf(pool: Pool, id: string, close: () => Promise<void>): Store {
  const { read, write, trouble } = createGuard(explainPostgres);
  const devices = postgresDevices(pool);
  const all = <T>(work: (client: PoolClient) => Promise<T>) => read(() => reading(pool, undefined, work));

  return {
    id,
    trouble,
    append: (changes, stamp) => write(() => writing(pool, (client) => appendToLog(client, changes, stamp))),
    changesSince: (seq, limit, athlete) =>
      read(() => reading(pool, athlete, (client) => changesAfter(client, seq, limit, athlete))),
    snapshot: (after, limit, athlete) =>
      read(() =>
        reading(pool, athlete, async (client) => {
          const { seq } = await readLogHead(client);
          return { seq, records: await recordPage(client, after, limit, athlete) };
        }),
      ),
    fold: (seq) => write(() => writing(pool, (client) => foldLog(client, seq))),
    records: (query) => read(() => reading(pool, query.athlete, (client) => findRecords(client, query))),
    record: (athlete, id) =>
      read(() =>
        reading(pool, athlete, async (client) => {
          const found = await recordsAt(client, [{ athlete, id }]);
          return found.get(placeKey(athlete, id))?.record ?? null;
        }),
      ),
    mark: (seq) => all((client) => logMark(client, seq)),
    lastSeq: () => all(async (client) => (await readLogHead(client)).seq),
    latestClock: () => all(async (client) => (await readLogHead(client)).clock),
    devices: () => read(() => devices.all()),
    deviceByToken: (tokenHash) => read(() => devices.byToken(tokenHash)),
    putDevice: (device) => write(() => devices.put(device)),
    putCode: (hash, expiresAt, rights) => write(() => devices.putCode(hash, expiresAt, rights)),
    waitingCodes: (now) => read(() => devices.waitingCodes(now)),
    takeCode: (hash, now) => write(() => devices.takeCode(hash, now)),
    setting: (name) => read(() => setting(pool, name)),
    putSetting: (name, value) => write(() => putSetting(pool, name, value)),
    backup: (path) => write(() => copyToFile(pool, path)),
    verify: () => read(() => postgresFaults(pool)),
    close: () => read(close),
  };
}

async function setting(pool: Pool, name: string): Promise<string | null> {
  const { rows } = await pool.query(`SELECT ${SETTING_COLUMNS} FROM settings WHERE name = $1`, [name]);
  return rows[0] === undefined ? null : readSetting(rows[0]);
}

async function putSetting(pool: Pool, name: string, value: string): Promise<void> {
  await pool.query(
    `INSERT INTO settings (${SETTING_COLUMNS}) VALUES ($1, $2, $3)
     ON CONFLICT (name) DO UPDATE SET value = excluded.value, checksum = excluded.checksum`,
    [...settingValues(name, value)],
  );
}

async function storeId(pool: Pool): Promise<string> {
  const fresh = settingValues(ID_SETTING, randomBytes(8).toString('hex'));
  await pool.query(
    `INSERT INTO settings (${SETTING_COLUMNS}) VALUES ($1, $2, $3) ON CONFLICT (name) DO NOTHING`,
    [...fresh],
  );
  return (await setting(pool, ID_SETTING)) ?? fresh[1];
}

async function own(client: PoolClient): Promise<void> {
  // The server may still be noticing that the daemon before has ended.
  await client.query(`SET lock_timeout TO ${OWNER_WAIT_MS}`);
  try {
    await client.query('SELECT pg_advisory_lock($1)', [OWNER_LOCK]);
  } catch (error) {
    if (!(error instanceof DatabaseError) || error.code !== LOCK_NOT_AVAILABLE) throw error;
    throw new StoreTrouble(
      'in-use',
      'Another daemon serves this database. Stop it, or name another database.',
    );
  }
}

function lockFolder(folder: string): { release(): void } {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const lock = takeLock(join(folder, LOCK_FILE));
  if (lock !== null) return lock;
  throw new StoreTrouble(
    'in-use',
    `Another daemon uses ${folder}. Stop it, or name another data folder with --data.`,
  );
}
