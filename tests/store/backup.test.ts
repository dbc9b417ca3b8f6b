import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { formatClock } from '@platewright/core/changes/clock.ts';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { backupPath, listBackups, makeBackup, originOf } from '../../daemon/src/keep/backup.ts';
import { backupFaults } from '../../daemon/src/keep/backup-faults.ts';
import { bytesFolder, copyBytes, getBytes, putBytes } from '../../daemon/src/keep/bytes.ts';
import { dropPhotos } from '../../daemon/src/keep/drop-photos.ts';
import { photoFaults } from '../../daemon/src/keep/photo-check.ts';
import { restoreAdvice } from '../../daemon/src/keep/restore-advice.ts';
import { rotate } from '../../daemon/src/keep/rotation.ts';
import { startUpkeep, upkeep } from '../../daemon/src/keep/upkeep.ts';
import { openSqliteStore, STORE_FILE } from '../../daemon/src/store/sqlite.ts';
import { replaceStore, unpackBackup } from '../../daemon/src/store/sqlite-restore.ts';
import { findFaults } from '../../daemon/src/store/sqlite-verify.ts';
import type { Store, StoredDevice } from '../../daemon/src/store/store.ts';
import { logOf } from '../support/log.ts';
import { weighIn } from './contract.ts';

const DAY = 86_400_000;
const START = Date.parse('2026-01-01T12:00:00Z');

let folder: string;
let store: Store;
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'platewright-backup-'));
  store = openSqliteStore(join(folder, 'live'), 'owner');
  await store.append([weighIn('c1', { kg: 80 }), weighIn('c2', { kg: 81 })], (clock) => clock);
});
afterEach(async () => {
  await store.close();
  rmSync(folder, { recursive: true });
});

const backups = () => join(folder, 'backups');

describe('the rotation', () => {
  it('keeps seven days, four weeks and twelve months of daily backups', () => {
    const times = Array.from({ length: 800 }, (_, day) => START + day * DAY);
    const kept = [...rotate(times)].sort((a, b) => b - a);
    expect(kept.length).toBeLessThanOrEqual(7 + 4 + 12);
    expect(kept.slice(0, 7)).toEqual(times.slice(-7).reverse());
    const oldest = kept.at(-1) ?? 0;
    expect((START + 799 * DAY - oldest) / DAY).toBeGreaterThan(300);
    let stepwise: number[] = [];
    for (const at of times) stepwise = [...rotate([...stepwise, at])];
    expect(new Set(stepwise)).toEqual(new Set(kept));
  });

  it('always keeps the newest, and loses none of a few, however far apart they are', () => {
    const times = fc.uniqueArray(
      fc.integer({ min: 0, max: 900 * 24 }).map((hour) => START + hour * 3_600_000),
    );
    fc.assert(
      fc.property(times, (all) => {
        const kept = rotate(all);
        if (all.length > 0) expect(kept.has(Math.max(...all))).toBe(true);
        expect(rotate([...kept])).toEqual(kept);
        if (all.length <= 7 && new Set(all.map((at) => Math.floor(at / DAY))).size === all.length) {
          expect(kept.size).toBe(all.length);
        }
      }),
    );
  });
});

describe('a backup', () => {
  it('is taken each day, rotated, and leaves other files alone', async () => {
    for (let day = 0; day < 12; day++) {
      for (const hour of [0, 5]) {
        await upkeep({
          store,
          data: folder,
          backups: backups(),
          now: () => START + day * DAY + hour * 3_600_000,
        });
      }
      if (day === 0) writeFileSync(join(backups(), 'mine.sqlite'), 'x');
    }
    const all = listBackups(backups(), START + 999 * DAY, null);
    expect(all[0]?.at).toBe(START + 11 * DAY);
    expect(all.length).toBeGreaterThanOrEqual(7);
    expect(all.length).toBeLessThan(12);
    expect(readdirSync(backups())).toHaveLength(all.length + 1);
    for (const { path } of all) expect(await findFaults(path)).toEqual([]);
  });

  it('from the future, made under a wrong clock, neither takes the place of others nor is gone back to before them', async () => {
    const at = (day: number) =>
      upkeep({ store, data: folder, backups: backups(), now: () => START + day * DAY });
    for (let day = 400; day < 440; day++) await at(day);
    for (let day = 0; day < 8; day++) {
      await at(day);
      await at(day + 0.1);
    }
    const past = listBackups(backups(), START + 8 * DAY, null).filter(({ at }) => at < START + 8 * DAY);
    expect(past.map(({ at }) => (at - START) / DAY)).toEqual([7, 6, 5, 4, 3, 2, 1]);
    expect(await restoreAdvice(backups(), '', START + 8 * DAY, null)).toContain(
      backupPath(backups(), store.id, START + 7 * DAY),
    );
  });

  it('clears away what a kill left of earlier ones, but none that may be under way', async () => {
    await makeBackup({ store, data: folder, backups: backups() }, START);
    const left = (day: number, end = '') => {
      const path = `${backupPath(backups(), store.id, START + day * DAY)}.unfinished${end}`;
      writeFileSync(path, 'half');
      utimesSync(path, START / 1000 + day * 86_400, START / 1000 + day * 86_400);
      return basename(path);
    };
    // As PostgreSQL’s, whose rows come in over a log beside the file.
    const [, , young] = [left(1), left(1, '-wal'), left(3)];
    await makeBackup({ store, data: folder, backups: backups() }, START + 3.5 * DAY);
    expect(readdirSync(backups()).filter((name) => name.includes('.unfinished'))).toEqual([young]);
  });

  it('is not taken of an empty store, and what keeps it from being taken is told', async () => {
    const empty = openSqliteStore(join(folder, 'empty'), 'owner');
    await upkeep({ store: empty, data: folder, backups: backups(), now: () => START });
    expect(existsSync(backups())).toBe(false);
    await empty.close();
    writeFileSync(backups(), 'a file in the way');
    await expect(upkeep({ store, data: folder, backups: backups(), now: () => START })).rejects.toThrow();
    const running = startUpkeep({
      store,
      data: folder,
      backups: backups(),
      now: () => START,
      onTrouble: () => {},
    });
    await running.stop();
  });

  it('folds what has been in the log for over 400 days, and no more', async () => {
    const at = (day: number) =>
      upkeep({ store, data: folder, backups: backups(), now: () => START + day * DAY });
    await at(0);
    await store.append([weighIn('c3', { kg: 82 })], (clock) => clock);
    await at(399);
    expect(await logOf(store)).toHaveLength(3);
    await at(401);
    expect(await store.changesSince(0, 9)).toBe('folded');
    expect(await store.changesSince(2, 9)).toMatchObject({ seq: 3 });
    expect(await store.verify()).toEqual([]);
  });
});

describe('a folder of backups that two stores share', () => {
  let other: Store;
  beforeEach(async () => {
    other = openSqliteStore(join(folder, 'other'), 'owner');
    await other.append([weighIn('o1', { kg: 60 })], (clock) => clock);
  });
  afterEach(() => other.close());

  const at = (of: Store, day: number) =>
    makeBackup({ store: of, data: folder, backups: backups() }, START + day * DAY);
  const own = async (of: Store) => listBackups(backups(), START + 999 * DAY, await originOf(of));
  const advice = async (of: Store | null) =>
    await restoreAdvice(backups(), '', START + 999 * DAY, of === null ? null : await originOf(of));

  it('gives each its days, and sends none back to the other’s', async () => {
    const first = await at(other, 0);
    for (let day = 0; day < 40; day += 1) await at(store, day);
    expect((await own(other)).map(({ path }) => path)).toEqual([first]);
    expect(await advice(other)).toContain(`restore '${first}'`);
    await upkeep({ store: other, data: folder, backups: backups(), now: () => START + 39 * DAY });
    expect(await own(other)).toHaveLength(2);
  });

  it('names none to a store that can’t say any more which are its own', async () => {
    const first = await at(store, 0);
    expect(await advice(null)).toContain(`restore '${first}'`);
    await at(other, 1);
    expect(await advice(null)).toMatch(/backups of several stores.*--try/);
  });

  it('knows a store’s own also after a restore, which gives it another id', async () => {
    const paths = [await at(store, 0), await at(store, 1)];
    await store.close();
    await replaceStore(paths[0] ?? '', join(folder, 'live'), join(folder, 'kept.sqlite'));
    store = openSqliteStore(join(folder, 'live'), 'owner');
    expect((await own(store)).map(({ path }) => path)).toEqual(paths.toReversed());
  });

  it('counts one that names no store, as earlier versions made them, as anyone’s', async () => {
    const path = await at(store, 0);
    const unnamed = join(backups(), basename(path).replace(/-\w+?-/, '-'));
    renameSync(path, unnamed);
    for (const one of [store, other]) expect(await own(one)).toMatchObject([{ path: unnamed }]);
  });
});

describe('a file beside the store', () => {
  const bytes = () => bytesFolder(folder);
  const content = Buffer.from('not really a picture');

  it('is kept once under its SHA-256, goes with backups, and is noticed when it is not as it was', async () => {
    const sha256 = putBytes(bytes(), content);
    expect(putBytes(bytes(), content)).toBe(sha256);
    expect(readdirSync(bytes(), { recursive: true })).toHaveLength(2);
    expect(getBytes(bytes(), sha256)).toEqual(new Uint8Array(content));
    expect(getBytes(bytes(), 'a'.repeat(64))).toBeNull();
    const fields = { date: '2026-01-02', sha256, mediaType: 'image/png' };
    const photos = [fields, { ...fields, sha256: 'b'.repeat(64) }].map((photo, i) =>
      weighIn(`p${i}`, photo, { kind: 'photo', record: `photo-${i}` }),
    );
    expect((await store.append(photos, (clock) => clock)).map(({ outcome }) => outcome)).toEqual([
      'stored',
      'stored',
    ]);
    expect(photoFaults(await store.records({ kind: 'photo' }), bytes())).toEqual([
      'photo photo-1 of athlete ann: its file is missing',
    ]);
    await makeBackup({ store, data: folder, backups: backups() }, START);
    const file = join(bytes(), sha256.slice(0, 2), sha256);
    writeFileSync(file, 'something else');
    expect(photoFaults(await store.records({ kind: 'photo' }), bytes())[0]).toMatch(
      /photo-0 .*differs from its name/,
    );
    rmSync(file);
    await copyBytes(bytesFolder(backups()), bytes());
    expect(getBytes(bytes(), sha256)).toEqual(new Uint8Array(content));
  });
});

describe('photos that can’t be copied', () => {
  it('keep neither the rows from being backed up nor the rotation from going on', async () => {
    writeFileSync(bytesFolder(folder), 'no folder');
    for (let day = 0; day < 40; day += 1)
      await expect(
        makeBackup({ store, data: folder, backups: backups() }, START + day * DAY),
      ).rejects.toThrow(/photos in .*bytes can't be read \(ENOTDIR\)/);
    expect(listBackups(backups(), START + 99 * DAY, null).length).toBeLessThan(20);
  });
});

describe('a file that no record names', () => {
  const [live, kept] = [() => bytesFolder(folder), () => bytesFolder(backups())];
  const of = () => ({ store, data: folder, backups: backups() });
  const at = (day: number) => START + day * DAY;
  const named = (folder: string) =>
    readdirSync(folder, { recursive: true })
      .map(String)
      .map((path) => basename(path));

  /** A file that was last put there on a day. */
  function put(content: string, day: number): string {
    const name = putBytes(live(), Buffer.from(content));
    utimesSync(join(live(), name.slice(0, 2), name), at(day) / 1000, at(day) / 1000);
    return name;
  }

  function photo(sha256: string, day: number, removed: boolean) {
    const fields = { date: '2026-01-02', sha256, mediaType: 'image/png', removed };
    const more = {
      kind: 'photo',
      record: `photo-${sha256.slice(0, 9)}`,
      clock: formatClock(at(day), 0, 'phone'),
    };
    return weighIn(`p-${sha256.slice(0, 9)}-${day}`, fields, more);
  }

  it('goes a day later, and from the backups once none of them names it', async () => {
    const [stays, goes, undone] = [put('stays', 0), put('goes', 0), put('undone', 0)];
    await store.append(
      [stays, goes, undone].map((name) => photo(name, 0, false)),
      (clock) => clock,
    );
    const first = await makeBackup(of(), at(0));
    for (const name of named(kept())) {
      if (name.length === 64) utimesSync(join(kept(), name.slice(0, 2), name), at(0) / 1000, at(0) / 1000);
    }
    await store.append([photo(goes, 2, true), photo(undone, 4, true)], (clock) => clock);
    const [lost, fresh] = [put('sent, and its record was lost', 2), put('waits for its record', 4)];

    await dropPhotos(of(), at(4) + DAY / 2);
    for (const name of [stays, undone, fresh]) expect(named(live())).toContain(name);
    for (const name of [goes, lost]) expect(named(live())).not.toContain(name);
    expect(named(kept())).toContain(goes);

    rmSync(first);
    await makeBackup(of(), at(5));
    writeFileSync(join(backups(), 'mine'), 'may be one');
    await dropPhotos(of(), at(5));
    expect(named(kept())).toContain(goes);
    rmSync(join(backups(), 'mine'));
    await dropPhotos(of(), at(5));
    expect(named(kept())).not.toContain(goes);
    expect(named(kept())).toContain(stays);
  });

  it('is looked for by the upkeep', async () => {
    const lost = put('sent, and its record was lost', -3);
    await upkeep({ ...of(), now: () => START });
    expect(named(live())).not.toContain(lost);
  });

  it('counts as new when it is sent again', async () => {
    const again = put('again', -3);
    expect(putBytes(live(), Buffer.from('again'))).toBe(again);
    await dropPhotos(of(), START);
    expect(named(live())).toContain(again);
  });
});

describe('a restore', () => {
  const live = () => join(folder, 'live');

  it('brings back all that was in the backup, under a new id, and keeps what it replaces', async () => {
    const path = await makeBackup({ store, data: folder, backups: backups() }, START);
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
    await unpackBackup(join(backups(), 'kept.sqlite'), join(folder, 'again'));
    const kept = openSqliteStore(join(folder, 'again'), 'owner');
    expect(await kept.lastSeq()).toBe(3);
    await kept.close();
  });

  it('shuts out who was let go since the backup, and goes on with who was paired since', async () => {
    const device = (id: string, revokedAt: number | null): StoredDevice => ({
      ...{ id, name: id, kind: 'extension', origin: null, tokenHash: id, revokedAt },
      ...{ rights: { athlete: null, access: 'write' }, pairedAt: START, lastSeenAt: null },
    });
    for (const id of ['lost', 'unsound']) await store.putDevice(device(id, null));
    const path = await makeBackup({ store, data: folder, backups: backups() }, START);
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
    const path = await makeBackup({ store, data: folder, backups: backups() }, START);
    const other = openSqliteStore(join(folder, 'other'), 'owner');
    const device = (id: string, revokedAt: number | null): StoredDevice => ({
      ...{ id, name: id, kind: 'extension', origin: null, tokenHash: id, revokedAt },
      ...{ rights: { athlete: null, access: 'write' }, pairedAt: START, lastSeenAt: null },
    });
    for (const one of [device('partner', null), device('lost', START)]) await other.putDevice(one);
    await other.close();
    await replaceStore(path, join(folder, 'other'), join(backups(), 'kept.sqlite'));
    const restored = openSqliteStore(join(folder, 'other'), 'guest');
    expect(await restored.devices()).toEqual([device('lost', START)]);
    await restored.close();
  });

  it('brings no pairing code back, which may have been used since', async () => {
    await store.putCode('h', START + 1, { athlete: null, access: 'write' });
    const path = await makeBackup({ store, data: folder, backups: backups() }, START);
    await store.takeCode('h', START);
    await store.close();
    await replaceStore(path, live(), join(backups(), 'kept.sqlite'));
    store = openSqliteStore(live(), 'owner');
    expect(await store.takeCode('h', START)).toBe('none');
  });

  it('of a backup that is not sound, is none, or is not there changes nothing', async () => {
    const path = await makeBackup({ store, data: folder, backups: backups() }, START);
    const db = new DatabaseSync(path);
    db.exec('UPDATE records SET date = 1');
    db.close();
    await store.close();
    const kept = join(backups(), 'kept.sqlite');
    await expect(replaceStore(path, live(), kept)).rejects.toThrow(/not sound .*older backup/);
    await expect(replaceStore(join(folder, 'x'), live(), kept)).rejects.toThrow(/no file/);
    writeFileSync(join(folder, 'text'), 'not a database, but long enough to be looked at as one');
    await expect(replaceStore(join(folder, 'text'), live(), kept)).rejects.toThrow();
    expect(readdirSync(live()).sort()).toEqual(['store.lock', STORE_FILE]);
    store = openSqliteStore(live(), 'owner');
    expect(await store.lastSeq()).toBe(2);
    expect(existsSync(kept)).toBe(false);
  });

  it('leaves the old store in place, and says why, when that can’t be kept', async () => {
    const path = await makeBackup({ store, data: folder, backups: backups() }, START);
    await store.append([weighIn('c3', { kg: 82 })], (clock) => clock);
    await store.close();
    writeFileSync(join(folder, 'file'), '');
    await expect(replaceStore(path, live(), join(folder, 'file/kept.sqlite'))).rejects.toThrow(
      /file can't be written\. Name another place/,
    );
    store = openSqliteStore(live(), 'owner');
    expect(await store.lastSeq()).toBe(3);
  });

  it.skipIf(process.getuid?.() !== 0)('of a backup that this user may not read says so', async () => {
    const path = await makeBackup({ store, data: folder, backups: backups() }, START);
    chmodSync(folder, 0o755);
    chmodSync(backups(), 0o755);
    chmodSync(path, 0o600);
    process.seteuid?.(65534);
    try {
      const said = new RegExp(`${path} can't be read\\. Give it to this user`);
      await expect(unpackBackup(path, join(folder, 'again'))).rejects.toThrow(said);
      await expect(backupFaults(path)).rejects.toThrow(said);
    } finally {
      process.seteuid?.(0);
    }
  });

  it('takes the place of a store that is too damaged to be opened', async () => {
    const path = await makeBackup({ store, data: folder, backups: backups() }, START);
    await store.close();
    writeFileSync(join(live(), STORE_FILE), 'x'.repeat(8192));
    expect(() => openSqliteStore(live(), 'owner')).toThrow(/damaged/);
    await replaceStore(path, live(), join(backups(), 'kept.sqlite'));
    store = openSqliteStore(live(), 'owner');
    expect(await store.lastSeq()).toBe(2);
  });

  it('takes over what of a damaged store is sound and newer, but not what of a sound one is newer', async () => {
    const path = await makeBackup({ store, data: folder, backups: backups() }, START);
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
    const good = await makeBackup({ store, data: folder, backups: backups() }, START);
    const bad = await makeBackup({ store, data: folder, backups: backups() }, START + DAY);
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
