import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { backupPath, makeBackup } from '../../daemon/src/keep/backup.ts';
import { backupFaults } from '../../daemon/src/keep/backup-faults.ts';
import { restoreAdvice } from '../../daemon/src/keep/restore-advice.ts';
import { openSqliteStore, STORE_FILE } from '../../daemon/src/store/sqlite.ts';
import { replaceStore, unpackBackup } from '../../daemon/src/store/sqlite-restore.ts';
import type { Store, StoredDevice } from '../../daemon/src/store/store.ts';
import { logOf } from '../support/log.ts';
import { useFolder } from '../support/use-folder.ts';
import { weighIn } from './contract.ts';
import { DAY, openLiveStore, START } from './live-store.ts';

const folder = useFolder();
const backups = () => join(folder(), 'backups');

let store: Store;
beforeEach(async () => {
  store = await openLiveStore(folder());
});
afterEach(() => store.close());

describe('a restore', () => {
  const live = () => join(folder(), 'live');

  it('brings back all that was in the backup, under a new id, and keeps what it replaces', async () => {
    const path = await makeBackup({ store, data: folder(), backups: backups() }, START);
    const before = [await store.records({}), await logOf(store), await store.devices(), await store.mark(2)];
    const { id } = store;
    await store.append([weighIn('c3', { kg: 82 })], (clock) => clock);
    await expect(replaceStore(path, live(), join(backups(), 'kept.sqlite'))).rejects.toThrow(/Stop it/);
    await store.close();
    await replaceStore(path, live(), join(backups(), 'kept.sqlite'));
    expect(readdirSync(live()).sort()).toEqual(['store.lock', STORE_FILE]);
    store = openSqliteStore(live(), 'owner');
    const after = [await store.records({}), await logOf(store), await store.devices(), await store.mark(2)];
    expect(after).toEqual(before);
    expect(store.id).not.toBe(id);
    expect(store.trouble()).toBeNull();
    await unpackBackup(join(backups(), 'kept.sqlite'), join(folder(), 'again'));
    const kept = openSqliteStore(join(folder(), 'again'), 'owner');
    expect(await kept.lastSeq()).toBe(3);
    await kept.close();
  });

  it('shuts out who was let go since the backup, and goes on with who was paired since', async () => {
    const device = (id: string, revokedAt: number | null): StoredDevice => ({
      ...{ id, name: id, kind: 'extension', origin: null, tokenHash: id, revokedAt },
      ...{ rights: { athlete: null, access: 'write' }, pairedAt: START, lastSeenAt: null },
    });
    for (const id of ['lost', 'unsound']) await store.putDevice(device(id, null));
    const path = await makeBackup({ store, data: folder(), backups: backups() }, START);
    for (const id of ['lost', 'unsound', 'new'])
      await store.putDevice(device(id, id === 'new' ? null : START + 1));
    await store.close();
    const db = new DatabaseSync(join(live(), STORE_FILE));
    db.exec("UPDATE devices SET access = 'read' WHERE id = 'unsound'");
    db.close();
    await replaceStore(path, live(), join(backups(), 'kept.sqlite'));
    store = openSqliteStore(live(), 'owner');
    expect(await store.devices()).toEqual([
      device('lost', START + 1),
      device('new', null),
      device('unsound', null),
    ]);
    expect(store.trouble()).toBeNull();
  });

  it('lets in nobody of another store in whose place it is put', async () => {
    const path = await makeBackup({ store, data: folder(), backups: backups() }, START);
    const other = openSqliteStore(join(folder(), 'other'), 'owner');
    const device = (id: string, revokedAt: number | null): StoredDevice => ({
      ...{ id, name: id, kind: 'extension', origin: null, tokenHash: id, revokedAt },
      ...{ rights: { athlete: null, access: 'write' }, pairedAt: START, lastSeenAt: null },
    });
    for (const one of [device('partner', null), device('lost', START)]) await other.putDevice(one);
    await other.close();
    await replaceStore(path, join(folder(), 'other'), join(backups(), 'kept.sqlite'));
    const restored = openSqliteStore(join(folder(), 'other'), 'guest');
    expect(await restored.devices()).toEqual([device('lost', START)]);
    await restored.close();
  });

  it('brings no pairing code back, which may have been used since', async () => {
    await store.putCode('h', START + 1, { athlete: null, access: 'write' });
    const path = await makeBackup({ store, data: folder(), backups: backups() }, START);
    await store.takeCode('h', START);
    await store.close();
    await replaceStore(path, live(), join(backups(), 'kept.sqlite'));
    store = openSqliteStore(live(), 'owner');
    expect(await store.takeCode('h', START)).toBe('none');
  });

  it('of a backup that is not sound, is none, or is not there changes nothing', async () => {
    const path = await makeBackup({ store, data: folder(), backups: backups() }, START);
    const db = new DatabaseSync(path);
    db.exec('UPDATE records SET date = 1');
    db.close();
    await store.close();
    const kept = join(backups(), 'kept.sqlite');
    await expect(replaceStore(path, live(), kept)).rejects.toThrow(/not sound .*older backup/);
    await expect(replaceStore(join(folder(), 'x'), live(), kept)).rejects.toThrow(/no file/);
    writeFileSync(join(folder(), 'text'), 'not a database, but long enough to be looked at as one');
    await expect(replaceStore(join(folder(), 'text'), live(), kept)).rejects.toThrow();
    expect(readdirSync(live()).sort()).toEqual(['store.lock', STORE_FILE]);
    store = openSqliteStore(live(), 'owner');
    expect(await store.lastSeq()).toBe(2);
    expect(existsSync(kept)).toBe(false);
  });

  it('leaves the old store in place, and says why, when that can’t be kept', async () => {
    const path = await makeBackup({ store, data: folder(), backups: backups() }, START);
    await store.append([weighIn('c3', { kg: 82 })], (clock) => clock);
    await store.close();
    writeFileSync(join(folder(), 'file'), '');
    await expect(replaceStore(path, live(), join(folder(), 'file/kept.sqlite'))).rejects.toThrow(
      /file can't be written\. Name another place/,
    );
    store = openSqliteStore(live(), 'owner');
    expect(await store.lastSeq()).toBe(3);
  });

  it.skipIf(process.getuid?.() !== 0)('of a backup that this user may not read says so', async () => {
    const path = await makeBackup({ store, data: folder(), backups: backups() }, START);
    chmodSync(folder(), 0o755);
    chmodSync(backups(), 0o755);
    chmodSync(path, 0o600);
    process.seteuid?.(65534);
    try {
      const said = new RegExp(`${path} can't be read\\. Give it to this user`);
      await expect(unpackBackup(path, join(folder(), 'again'))).rejects.toThrow(said);
      await expect(backupFaults(path)).rejects.toThrow(said);
    } finally {
      process.seteuid?.(0);
    }
  });

  it('takes the place of a store that is too damaged to be opened', async () => {
    const path = await makeBackup({ store, data: folder(), backups: backups() }, START);
    await store.close();
    writeFileSync(join(live(), STORE_FILE), 'x'.repeat(8192));
    expect(() => openSqliteStore(live(), 'owner')).toThrow(/damaged/);
    await replaceStore(path, live(), join(backups(), 'kept.sqlite'));
    store = openSqliteStore(live(), 'owner');
    expect(await store.lastSeq()).toBe(2);
  });

  it('takes over what of a damaged store is sound and newer, but not what of a sound one is newer', async () => {
    const path = await makeBackup({ store, data: folder(), backups: backups() }, START);
    const later = Array.from({ length: 40 }, (_, i) => weighIn(`later${i}`, { kg: 90 }));
    await store.append(later, (clock) => clock);
    await store.close();
    const db = new DatabaseSync(join(live(), STORE_FILE));
    db.exec(`UPDATE changes SET body = replace(body, '90', '91') WHERE seq = 7;
      UPDATE records SET fields = '{' WHERE id = 'weigh-later9'; UPDATE head SET clock = NULL`);
    db.close();
    expect(await replaceStore(path, live(), join(backups(), 'kept.sqlite'))).toBe(39);
    store = openSqliteStore(live(), 'owner');
    expect(await store.verify()).toEqual([]);
    expect(await store.lastSeq()).toBe(41);
    expect((await store.record('ann', 'weigh-later9'))?.fields).toEqual({ kg: 90 });
    expect(await store.record('ann', 'weigh-later4')).toBeNull();
    await store.close();
    expect(await replaceStore(path, live(), join(backups(), 'again.sqlite'))).toBe(0);
    store = openSqliteStore(live(), 'owner');
    expect(await store.lastSeq()).toBe(2);
  });

  it('is advised from the newest backup that is sound', async () => {
    expect(await restoreAdvice(backups(), '', START + DAY, null)).toMatch(/no sound backup/);
    const good = await makeBackup({ store, data: folder(), backups: backups() }, START);
    const bad = await makeBackup({ store, data: folder(), backups: backups() }, START + DAY);
    const db = new DatabaseSync(bad);
    db.exec(`UPDATE records SET fields = '{}'`);
    db.close();
    const advice = await restoreAdvice(backups(), ' --data /elsewhere', START + DAY, null);
    expect(advice).toContain(`platewright restore '${good}' --data /elsewhere (made`);
    expect(good).toBe(backupPath(backups(), store.id, START));
  });

  it('is advised from a backup of an older schema too, which a restore brings up', async () => {
    const old = backupPath(backups(), store.id, START);
    mkdirSync(backups(), { recursive: true });
    lay(old);
    expect(await restoreAdvice(backups(), '', START + DAY, null)).toContain(`platewright restore '${old}'`);
    expect(await backupFaults(old)).toEqual([]);
    const db = new DatabaseSync(old);
    db.exec(`UPDATE changes SET body = replace(body, '80', '81') WHERE seq = 2`);
    db.close();
    expect(await backupFaults(old)).toHaveLength(1);
    expect(await restoreAdvice(backups(), '', START + DAY, null)).toMatch(/no sound backup/);
  });
});

function lay(path: string): void {
  const db = new DatabaseSync(path);
  db.exec(readFileSync(join(import.meta.dirname, '../../fixtures/stores/v1.sql'), 'utf8'));
  db.close();
}
