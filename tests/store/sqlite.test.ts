import { renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { describe, expect, it } from 'vitest';
import { SCHEMA_VERSION } from '../../daemon/src/store/migrations/migrations.ts';
import { isServed, openSqliteStore, STORE_FILE } from '../../daemon/src/store/sqlite.ts';
import { requireSqlite } from '../../daemon/src/store/sqlite-file.ts';
import { findFaults } from '../../daemon/src/store/sqlite-verify.ts';
import { useFolder } from '../support/use-folder.ts';
import { storeContract, weighIn } from './contract.ts';

const folder = useFolder();

storeContract('SQLite', async () => openSqliteStore(folder(), 'owner'));

function tamper(sql: string): void {
  const db = new DatabaseSync(join(folder(), STORE_FILE));
  db.exec(sql);
  db.close();
}

async function threeWeighIns(): Promise<void> {
  const store = openSqliteStore(folder(), 'owner');
  const rights = { athlete: 'ann', access: 'read' } as const;
  await store.putCode('h', 10, rights);
  await store.putDevice({
    ...{ id: 'phone', name: 'Phone', kind: 'dashboard', origin: null, tokenHash: 'h', rights },
    ...{ pairedAt: 1, lastSeenAt: null, revokedAt: null },
  });
  await store.append(
    [1, 2, 3].map((n) => weighIn(`c${n}`, { kg: 80 + n })),
    (clock) => clock,
  );
  await store.close();
}

function faults(): Promise<string[]> {
  return findFaults(join(folder(), STORE_FILE));
}

describe('the SQLite store', () => {
  it('keeps its name and content over a restart, and its files to its user', async () => {
    await threeWeighIns();
    const first = openSqliteStore(folder(), 'owner');
    const { id } = first;
    expect(await first.lastSeq()).toBe(3);
    await first.close();
    const second = openSqliteStore(folder(), 'owner');
    expect(second.id).toBe(id);
    await second.close();
  });

  it('says nothing is stored once its file was moved or replaced under it, and goes on when it is back', async () => {
    const store = openSqliteStore(folder(), 'owner');
    const file = join(folder(), STORE_FILE);
    const append = (id: string) => store.append([weighIn(id, { kg: 80 })], (clock) => clock);
    renameSync(file, `${file}.away`);
    await expect(append('moved')).rejects.toThrow(/was moved or replaced.*Nothing was saved/);
    writeFileSync(file, '');
    await expect(append('replaced')).rejects.toThrow(/was moved or replaced/);
    renameSync(`${file}.away`, file);
    await append('back');
    expect(await store.lastSeq()).toBe(1);
    await store.close();
  });

  it('stores nothing of a batch of which a row can not be written, and goes on', async () => {
    const store = openSqliteStore(folder(), 'owner');
    const changes = Array.from({ length: 300 }, (_, i) => weighIn(`c${i}`, { kg: 80 }));
    tamper("INSERT INTO changes VALUES (290, 'in the way', '{}', zeroblob(32))");
    await expect(store.append(changes, (clock) => clock)).rejects.toThrow(/UNIQUE/);
    tamper('DELETE FROM changes');
    expect(await store.records({})).toEqual([]);
    await store.append(changes, (clock) => clock);
    expect(await store.verify()).toEqual([]);
    await store.close();
  });

  it('has one owner at a time, and guests beside it', async () => {
    const owner = openSqliteStore(folder(), 'owner');
    expect(isServed(folder())).toBe(true);
    expect(() => openSqliteStore(folder(), 'owner')).toThrow(/Another Platewright serves/);
    const guest = openSqliteStore(folder(), 'guest');
    const rights = { athlete: null, access: 'write' } as const;
    await guest.putCode('h', 10, rights);
    expect(await owner.takeCode('h', 1)).toEqual(rights);
    await guest.close();
    await owner.close();
    expect(isServed(folder())).toBe(false);
    openSqliteStore(folder(), 'owner').close();
  });

  it('has no guests before there is a store', () => {
    expect(() => openSqliteStore(join(folder(), 'nothing'), 'guest')).toThrow(/no store/);
    expect(() => statSync(join(folder(), 'nothing'))).toThrow();
  });

  it('leaves a newer store untouched', async () => {
    await threeWeighIns();
    tamper(`PRAGMA user_version = ${SCHEMA_VERSION + 1}`);
    expect(() => openSqliteStore(folder(), 'owner')).toThrow(/newer Platewright.*Update/);
    tamper(`PRAGMA user_version = ${SCHEMA_VERSION}`);
    expect(await faults()).toEqual([]);
  });

  it('leaves a database of another program and a file that is none untouched', () => {
    tamper('CREATE TABLE other (x)');
    expect(() => openSqliteStore(folder(), 'owner')).toThrow(/another program/);
    const text = join(folder(), 'text');
    writeFileSync(text, 'not a folder');
    expect(() => openSqliteStore(text, 'owner')).toThrow(/can't be written/);
    rmSync(join(folder(), STORE_FILE));
    writeFileSync(join(folder(), STORE_FILE), 'not a database, but long enough to be looked at as one');
    expect(() => openSqliteStore(folder(), 'owner')).toThrow(/damaged/);
  });

  it('refuses an SQLite that can lose a commit', () => {
    for (const old of ['3.51.2', '3.50.99', '2.99.99', '0']) expect(() => requireSqlite(old)).toThrow(old);
    for (const good of ['3.51.3', '3.52.0', '4.0.0']) requireSqlite(good);
  });

  it.each([
    ['a changed row', `UPDATE changes SET body = replace(body, '82', '92') WHERE seq = 2`, /change 2 \(c2\)/],
    ['a changed id', `UPDATE changes SET id = 'cX' WHERE seq = 2`, /change 2: its id/],
    ['a changed checksum', `UPDATE changes SET hash = zeroblob(32) WHERE seq = 2`, /change 2 \(c2\)/],
    ['a missing row', 'DELETE FROM changes WHERE seq = 2', /2 to 2 are missing/],
    ['a log cut short', 'DELETE FROM changes WHERE seq = 3', /ends at 2, and 3/],
    ['a changed record', `UPDATE records SET fields = '{"kg":92}' WHERE id = 'weigh-c2'`, /weigh-c2/],
    ['an unreadable record', `UPDATE records SET fields = '{"kg' WHERE id = 'weigh-c2'`, /weigh-c2/],
    ['a missing record', `DELETE FROM records WHERE id = 'weigh-c2'`, /weigh-c2.*missing/],
    [
      'an invented record',
      `INSERT INTO records VALUES ('ann', 'z', 'day', null, '{}', '{}', x'')`,
      /record z/,
    ],
    ['a changed device', `UPDATE devices SET access = 'write'`, /device phone/],
    ['a changed setting', `UPDATE settings SET value = 'x'`, /setting store/],
    ['a changed code', 'UPDATE codes SET expires_at = 1000', /pairing code/],
    ['a changed head', `UPDATE head SET clock = '00000000ffff-0000-phone'`, /head of the change log/],
    ['a changed table', 'DROP INDEX records_by_kind', /tables are not as they were made/],
  ])('names %s', async (_, sql, line) => {
    await threeWeighIns();
    tamper(sql);
    const found = await faults();
    expect(found.some((fault) => line.test(fault))).toBe(true);
  });

  it('copies itself while in use, into a file that is not there yet', async () => {
    await threeWeighIns();
    const store = openSqliteStore(folder(), 'owner');
    const path = join(folder(), 'backups', STORE_FILE);
    await store.backup(path);
    await expect(store.backup(path)).rejects.toThrow(/there already/);
    const before = await store.records({});
    await store.close();
    const copy = openSqliteStore(join(folder(), 'backups'), 'owner');
    expect(await copy.records({})).toEqual(before);
    expect(await copy.verify()).toEqual([]);
    await copy.close();
  });
});
