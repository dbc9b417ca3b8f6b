import { existsSync, readdirSync, renameSync, utimesSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { backupPath, listBackups, makeBackup, originOf } from '../../daemon/src/keep/backup.ts';
import { restoreAdvice } from '../../daemon/src/keep/restore-advice.ts';
import { rotate } from '../../daemon/src/keep/rotation.ts';
import { startUpkeep, upkeep } from '../../daemon/src/keep/upkeep.ts';
import { openSqliteStore } from '../../daemon/src/store/sqlite.ts';
import { replaceStore } from '../../daemon/src/store/sqlite-restore.ts';
import { findFaults } from '../../daemon/src/store/sqlite-verify.ts';
import type { Store } from '../../daemon/src/store/store.ts';
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
          data: folder(),
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
      upkeep({ store, data: folder(), backups: backups(), now: () => START + day * DAY });
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
    await makeBackup({ store, data: folder(), backups: backups() }, START);
    const left = (day: number, end = '') => {
      const path = `${backupPath(backups(), store.id, START + day * DAY)}.unfinished${end}`;
      writeFileSync(path, 'half');
      utimesSync(path, START / 1000 + day * 86_400, START / 1000 + day * 86_400);
      return basename(path);
    };
    // As PostgreSQL’s, whose rows come in over a log beside the file.
    const [, , young] = [left(1), left(1, '-wal'), left(3)];
    await makeBackup({ store, data: folder(), backups: backups() }, START + 3.5 * DAY);
    expect(readdirSync(backups()).filter((name) => name.includes('.unfinished'))).toEqual([young]);
  });

  it('is not taken of an empty store, and what keeps it from being taken is told', async () => {
    const empty = openSqliteStore(join(folder(), 'empty'), 'owner');
    await upkeep({ store: empty, data: folder(), backups: backups(), now: () => START });
    expect(existsSync(backups())).toBe(false);
    await empty.close();
    writeFileSync(backups(), 'a file in the way');
    await expect(upkeep({ store, data: folder(), backups: backups(), now: () => START })).rejects.toThrow();
    const running = startUpkeep({
      store,
      data: folder(),
      backups: backups(),
      now: () => START,
      onTrouble: () => {},
    });
    await running.stop();
  });

  it('folds what has been in the log for over 400 days, and no more', async () => {
    const at = (day: number) =>
      upkeep({ store, data: folder(), backups: backups(), now: () => START + day * DAY });
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
    other = openSqliteStore(join(folder(), 'other'), 'owner');
    await other.append([weighIn('o1', { kg: 60 })], (clock) => clock);
  });
  afterEach(() => other.close());

  const at = (of: Store, day: number) =>
    makeBackup({ store: of, data: folder(), backups: backups() }, START + day * DAY);
  const own = async (of: Store) => listBackups(backups(), START + 999 * DAY, await originOf(of));
  const advice = async (of: Store | null) =>
    await restoreAdvice(backups(), '', START + 999 * DAY, of === null ? null : await originOf(of));

  it('gives each its days, and sends none back to the other’s', async () => {
    const first = await at(other, 0);
    for (let day = 0; day < 40; day += 1) await at(store, day);
    expect((await own(other)).map(({ path }) => path)).toEqual([first]);
    expect(await advice(other)).toContain(`restore '${first}'`);
    await upkeep({ store: other, data: folder(), backups: backups(), now: () => START + 39 * DAY });
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
    await replaceStore(paths[0] ?? '', join(folder(), 'live'), join(folder(), 'kept.sqlite'));
    store = openSqliteStore(join(folder(), 'live'), 'owner');
    expect((await own(store)).map(({ path }) => path)).toEqual(paths.toReversed());
  });

  it('counts one that names no store, as earlier versions made them, as anyone’s', async () => {
    const path = await at(store, 0);
    const unnamed = join(backups(), basename(path).replace(/-\w+?-/, '-'));
    renameSync(path, unnamed);
    for (const one of [store, other]) expect(await own(one)).toMatchObject([{ path: unnamed }]);
  });
});
