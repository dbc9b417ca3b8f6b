import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { describe, expect, it } from 'vitest';
import { migrations, SCHEMA_VERSION } from '../../daemon/src/store/migrations/migrations.ts';
import { openSqliteStore, STORE_FILE } from '../../daemon/src/store/sqlite.ts';
import { logOf } from '../support/log.ts';
import { useFolder } from '../support/use-folder.ts';

const OLD = join(import.meta.dirname, '../../fixtures/stores');

const folder = useFolder();

/** Puts a stored older file in place. */
function lay(version: number): DatabaseSync {
  const db = new DatabaseSync(join(folder(), STORE_FILE));
  db.exec(readFileSync(join(OLD, `v${version}.sql`), 'utf8'));
  return db;
}

const older = migrations.map(({ version }) => version).filter((version) => version < SCHEMA_VERSION);

describe.each(older)('a store of schema %i', (version) => {
  it('is brought up to date with all that is in it', async () => {
    const db = lay(version);
    const before = db.prepare('SELECT body FROM changes ORDER BY seq').all();
    db.close();
    const store = openSqliteStore(folder(), 'owner');
    expect(await store.verify()).toEqual([]);
    expect(store.id).toBe('0123456789abcdef');
    expect((await logOf(store)).map((change) => JSON.stringify(change))).toEqual(
      before.map(({ body }) => body),
    );
    expect((await store.record('ann', 'w1'))?.fields).toEqual({ date: '2026-01-02', kg: 80.2 });
    const devices = await store.devices();
    expect(devices.map(({ name }) => name)).toEqual(['Phone', 'Bob’s tablet']);
    for (const { rights } of devices) expect(rights).toEqual({ athlete: null, access: 'write' });
    expect(await store.takeCode('c'.repeat(64), 1_767_312_599_999)).toEqual({
      athlete: null,
      access: 'write',
    });
    await store.close();
  });

  it('is copied first', () => {
    lay(version).close();
    openSqliteStore(folder(), 'owner').close();
    expect(readdirSync(join(folder(), 'backups'))).toEqual([`before-schema-${SCHEMA_VERSION}.sqlite`]);
    const copy = new DatabaseSync(join(folder(), 'backups', `before-schema-${SCHEMA_VERSION}.sqlite`));
    expect(copy.prepare('PRAGMA user_version').get()?.user_version).toBe(version);
    expect(copy.prepare('SELECT count(*) AS n FROM changes').get()?.n).toBe(7);
    copy.close();
  });

  it('is left as it was when the migration can not be finished', () => {
    const db = lay(version);
    db.exec('CREATE TABLE folded (x)');
    db.close();
    expect(() => openSqliteStore(folder(), 'owner')).toThrow();
    const after = new DatabaseSync(join(folder(), STORE_FILE));
    expect(after.prepare('PRAGMA user_version').get()?.user_version).toBe(version);
    expect(after.prepare('PRAGMA table_info(devices)').all()).toHaveLength(8);
    after.exec('DROP TABLE folded');
    after.close();
    openSqliteStore(folder(), 'owner').close();
  });

  it('is not touched by a guest', () => {
    lay(version).close();
    expect(() => openSqliteStore(folder(), 'guest')).toThrow(/older schema/);
    expect(existsSync(join(folder(), 'backups'))).toBe(false);
  });
});

it('has a stored file of each older schema', () => {
  expect(readdirSync(OLD)).toEqual(older.map((version) => `v${version}.sql`));
});
