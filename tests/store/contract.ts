import type { Change } from '@platewright/core/changes/change.ts';
import { formatClock } from '@platewright/core/changes/clock.ts';
import { applyChange, type StoredRecord } from '@platewright/core/changes/merge.ts';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { RecordPlace, Stamp, Store, StoredDevice } from '../../daemon/src/store/store.ts';

const keep: Stamp = (clock) => clock;

export function weighIn(id: string, fields: Change['fields'], more: Partial<Change> = {}): Change {
  return {
    id,
    athlete: 'ann',
    device: 'phone',
    clock: formatClock(1000, 0, 'phone'),
    kind: 'weigh-in',
    record: `weigh-${id}`,
    fields,
    ...more,
  };
}

const device: StoredDevice = {
  id: 'phone',
  name: 'Phone',
  kind: 'extension',
  origin: 'chrome-extension://abc',
  tokenHash: 'a'.repeat(64),
  rights: { athlete: null, access: 'write' },
  pairedAt: 5,
  lastSeenAt: null,
  revokedAt: null,
};

/** What every engine must do. `open` gives a store that is empty. */
export function storeContract(name: string, open: () => Promise<Store>): void {
  describe(`${name} keeps the contract of a store`, () => {
    let store: Store;
    beforeEach(async () => {
      store = await open();
    });
    afterEach(() => store.close());

    it('is not taken for damaged by text that no database gives back as it was', async () => {
      const odd = 'a\ud800b\u0000c';
      await store.putDevice({ ...device, name: odd });
      expect((await store.devices()).map(({ name }) => name)).toEqual(['a\ufffdb\ufffdc']);
      expect((await store.deviceByToken(device.tokenHash))?.id).toBe(device.id);
      const food = weighIn('c1', { date: odd, note: odd, [odd]: odd }, { kind: 'food' });
      const outcomes = await store.append(
        [food, { ...food, id: 'c2', clock: formatClock(2000, 0, 'phone') }],
        keep,
      );
      expect(outcomes.map(({ outcome }) => outcome)).toEqual(['stored', 'stored']);
      expect((await store.record('ann', 'weigh-c1'))?.fields).toEqual(food.fields);
      expect(await store.verify()).toEqual([]);
    });

    it('numbers what it accepts and folds it into records', async () => {
      const outcomes = await store.append(
        [
          weighIn('c1', { date: '2026-01-02', kg: 80 }),
          weighIn('c2', { kg: 81 }, { record: 'weigh-c1', clock: formatClock(2000, 0, 'phone') }),
        ],
        keep,
      );
      expect(outcomes.map((o) => o.outcome === 'stored' && o.seq)).toEqual([1, 2]);
      const record = await store.record('ann', 'weigh-c1');
      expect(record?.fields).toEqual({ date: '2026-01-02', kg: 81 });
      expect(record?.clocks).toEqual({
        date: formatClock(1000, 0, 'phone'),
        kg: formatClock(2000, 0, 'phone'),
      });
      expect(await store.latestClock()).toBe(formatClock(2000, 0, 'phone'));
      expect(await store.lastSeq()).toBe(2);
    });

    it('knows a change by its id and answers with the clock it is stored under', async () => {
      const stored = formatClock(7, 0, 'phone');
      await store.append([weighIn('c1', { kg: 80 })], () => stored);
      const [again, twin] = await store.append([weighIn('c1', { kg: 99 }), weighIn('c1', { kg: 98 })], keep);
      expect(again).toEqual({ id: 'c1', outcome: 'known', seq: 1, clock: stored });
      expect(twin).toEqual(again);
      expect((await store.record('ann', 'weigh-c1'))?.fields).toEqual({ kg: 80 });
      expect(await store.lastSeq()).toBe(1);
    });

    it('lets the later clock win whichever came first', async () => {
      const late = weighIn('c1', { kg: 82 }, { record: 'w', clock: formatClock(9000, 0, 'a') });
      const early = weighIn('c2', { kg: 79, note: 'early' }, { record: 'w', clock: formatClock(10, 0, 'b') });
      await store.append([late, early], keep);
      expect((await store.record('ann', 'w'))?.fields).toEqual({ kg: 82, note: 'early' });
    });

    it('refuses what it can not keep, with the reason, and keeps the rest', async () => {
      const outcomes = await store.append(
        [
          weighIn('bad', { kg: -3 }),
          weighIn('odd', { x: 1 }, { kind: 'unheard-of' }),
          weighIn('who', { name: 'Ann' }, { kind: 'athlete', record: 'bob' }),
          weighIn('good', { kg: 80 }, { record: 'w' }),
          weighIn('mix', { date: '2026-01-01' }, { record: 'w', kind: 'day' }),
        ],
        keep,
      );
      expect(outcomes.map((o) => o.outcome)).toEqual([
        'rejected',
        'rejected',
        'rejected',
        'stored',
        'rejected',
      ]);
      for (const o of outcomes) if (o.outcome === 'rejected') expect(o.reason.length).toBeGreaterThan(10);
      expect(await store.lastSeq()).toBe(1);
    });

    it('stores nothing of a batch that breaks off', async () => {
      const breaks: Stamp = (clock, from) => {
        if (from === 'broken') throw new Error('no stamp');
        return clock;
      };
      const batch = [weighIn('c1', { kg: 80 }), weighIn('c2', { kg: 81 }, { device: 'broken' })];
      await expect(store.append(batch, breaks)).rejects.toThrow('no stamp');
      expect(await store.lastSeq()).toBe(0);
      expect(await store.records({})).toEqual([]);
    });

    it('takes a batch of any length as it takes one change after the other', async () => {
      const changes = Array.from({ length: 330 }, (_, i) =>
        weighIn(
          // Every seventh comes twice, the second time far from the first; records are changed again near and far.
          `c${i % 7 === 6 ? (i * 13) % 97 : i}`,
          i % 5 === 0 ? { kg: 70 + (i % 20), note: `“${i}”, "fields":{` } : { kg: 70 + (i % 20) },
          {
            record: i % 3 === 0 ? `w${i % 11}` : `own-${i}`,
            athlete: i % 4 === 0 ? 'ann' : 'bob',
            clock: formatClock(1000 + ((i * 37) % 50), 0, 'phone'),
          },
        ),
      );
      await store.append(changes.slice(0, 40), keep);
      await store.fold(20);
      const outcomes = await store.append(changes, keep);
      const ids = changes.map(({ id }) => id);
      const order = [...new Set(ids)];
      expect(outcomes.map((one) => [one.id, one.outcome, 'seq' in one && one.seq])).toEqual(
        ids.map((id, i) => {
          const isNew = i >= 40 && ids.indexOf(id) === i;
          return [id, isNew ? 'stored' : 'known', order.indexOf(id) + 1];
        }),
      );
      const records = new Map<string, StoredRecord>();
      for (const change of changes.filter(({ id }, i) => ids.indexOf(id) === i)) {
        const place = `${change.athlete} ${change.record}`;
        records.set(place, applyChange(records.get(place), change));
      }
      const byPlace = [...records].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, record]) => record);
      expect(await store.records({})).toEqual(byPlace);
      expect(await store.verify()).toEqual([]);
    });

    it('gives changes page by page, as they were stored', async () => {
      const changes = Array.from({ length: 5 }, (_, i) => weighIn(`c${i}`, { kg: 80 + i }));
      await store.append(changes, keep);
      const first = await store.changesSince(0, 3);
      expect(first).toEqual({ changes: changes.slice(0, 3), seq: 3, more: true });
      expect(await store.changesSince(3, 3)).toEqual({ changes: changes.slice(3), seq: 5, more: false });
      expect(await store.changesSince(5, 3)).toEqual({ changes: [], seq: 5, more: false });
    });

    it('marks each place in the log once and for all', async () => {
      await store.append([weighIn('c1', { kg: 80 })], keep);
      const first = await store.mark(1);
      expect(await store.mark(0)).toBe('');
      expect(first).toMatch(/^[0-9a-f]{16,}$/);
      expect(await store.mark(2)).toBeNull();
      await store.append([weighIn('c2', { kg: 80 })], keep);
      expect(await store.mark(1)).toBe(first);
      expect(await store.mark(2)).not.toBe(first);
    });

    it('gives the changes of one athlete, and where the log ends', async () => {
      const changes = Array.from({ length: 6 }, (_, i) =>
        weighIn(`c${i}`, { kg: 80 + i }, { athlete: i % 2 === 0 ? 'ann' : 'bob' }),
      );
      await store.append(changes, keep);
      const ann = changes.filter(({ athlete }) => athlete === 'ann');
      expect(await store.changesSince(0, 2, 'ann')).toEqual({ changes: ann.slice(0, 2), seq: 3, more: true });
      expect(await store.changesSince(3, 2, 'ann')).toEqual({ changes: ann.slice(2), seq: 6, more: false });
      expect(await store.changesSince(0, 9, 'cat')).toEqual({ changes: [], seq: 6, more: false });
    });

    it('gives all records page by page, of all athletes or of one', async () => {
      const places = ['ann a', 'ann b', 'ann c', 'bob a', 'bob b'].map((place) => place.split(' '));
      await store.append(
        places.map(([athlete = '', id = ''], i) => weighIn(`c${i}`, { kg: 80 }, { athlete, record: id })),
        keep,
      );
      const read = async (athlete?: string): Promise<string[]> => {
        const found: string[] = [];
        for (let after: RecordPlace | null = null; ; ) {
          const page: Awaited<ReturnType<Store['snapshot']>> = await store.snapshot(after, 2, athlete);
          expect(page.seq).toBe(5);
          found.push(...page.records.map((r) => `${r.athlete} ${r.id}`));
          after = page.records.at(-1) ?? null;
          if (page.records.length < 2) return found;
        }
      };
      expect(await read()).toEqual(['ann a', 'ann b', 'ann c', 'bob a', 'bob b']);
      expect(await read('bob')).toEqual(['bob a', 'bob b']);
      expect(await read('cat')).toEqual([]);
      expect((await store.snapshot({ athlete: 'ann', id: 'z' }, 9, 'bob')).records).toHaveLength(2);
      expect((await store.snapshot({ athlete: 'cat', id: 'a' }, 9, 'bob')).records).toEqual([]);
    });

    it('folds the beginning of its log, and still knows what was in it', async () => {
      const changes = Array.from({ length: 6 }, (_, i) =>
        weighIn(
          `c${i}`,
          { kg: 80 + i },
          { record: i < 2 ? 'w' : `w${i}`, clock: formatClock(9 + i, 0, 'phone') },
        ),
      );
      await store.append(changes, keep);
      const [records, mark] = [await store.records({}), await store.mark(3)];
      expect(await store.fold(4)).toBe(3);
      expect(await store.fold(4)).toBe(0);
      expect(await store.records({})).toEqual(records);
      expect(await store.changesSince(2, 9)).toBe('folded');
      expect(await store.changesSince(2, 9, 'ann')).toBe('folded');
      expect(await store.changesSince(3, 9)).toEqual({ changes: changes.slice(3), seq: 6, more: false });
      expect([await store.mark(2), await store.mark(3)]).toEqual([null, mark]);
      const again = await store.append(changes, keep);
      expect(again).toEqual(changes.map(({ id, clock }, i) => ({ id, outcome: 'known', seq: i + 1, clock })));
      const more = weighIn('c9', { kg: 70 }, { record: 'w', clock: formatClock(99, 0, 'phone') });
      expect(await store.append([more], keep)).toMatchObject([{ outcome: 'stored', seq: 7 }]);
      expect((await store.record('ann', 'w'))?.fields).toEqual({ kg: 70 });
      expect(await store.verify()).toEqual([]);
      expect(await store.fold(99)).toBe(4);
      expect(await store.changesSince(7, 9)).toEqual({ changes: [], seq: 7, more: false });
      expect([await store.lastSeq(), await store.latestClock()]).toEqual([7, formatClock(99, 0, 'phone')]);
      expect(await store.verify()).toEqual([]);
    });

    it('finds records by athlete, kind and date, in order', async () => {
      await store.append(
        [
          weighIn('3', { date: '2026-01-03' }),
          weighIn('1', { date: '2026-01-01' }),
          weighIn('2', { date: '2026-01-02' }),
          weighIn('x', { date: '2026-01-02' }, { athlete: 'bob' }),
          weighIn('y', { date: '2026-01-02' }, { kind: 'day' }),
        ],
        keep,
      );
      const ids = async (query: Parameters<Store['records']>[0]) =>
        (await store.records(query)).map((r) => r.id);
      expect(await ids({})).toEqual(['weigh-1', 'weigh-2', 'weigh-3', 'weigh-y', 'weigh-x']);
      expect(await ids({ athlete: 'ann', kind: 'weigh-in', from: '2026-01-02' })).toEqual([
        'weigh-2',
        'weigh-3',
      ]);
      expect(await ids({ athlete: 'ann', kind: 'weigh-in', from: '2026-01-02', to: '2026-01-02' })).toEqual([
        'weigh-2',
      ]);
      expect(await ids({ kind: 'day' })).toEqual(['weigh-y']);
      expect(await ids({ athlete: 'ann', after: 'weigh-1', limit: 2 })).toEqual(['weigh-2', 'weigh-3']);
    });

    it('keeps devices and finds them by token', async () => {
      await store.putDevice(device);
      expect(await store.deviceByToken(device.tokenHash)).toEqual(device);
      expect(await store.deviceByToken('b'.repeat(64))).toBeNull();
      const later: StoredDevice = {
        ...device,
        lastSeenAt: 9,
        revokedAt: 10,
        rights: { athlete: 'ann', access: 'read' },
      };
      await store.putDevice(later);
      expect(await store.devices()).toEqual([later]);
    });

    it('keeps a key taken back, whatever is written of the device as it was read before', async () => {
      const revoked = { ...device, revokedAt: 10 };
      await store.putDevice(device);
      await store.putDevice(revoked);
      await store.putDevice({ ...device, lastSeenAt: 11 });
      expect(await store.deviceByToken(device.tokenHash)).toEqual(revoked);
      expect(await store.verify()).toEqual([]);
    });

    it('takes quotes and SQL in any argument for plain text', async () => {
      await store.append([weighIn('c1', { date: '2026-01-02', kg: 80 })], keep);
      await store.putDevice(device);
      await store.putCode('h', 100, { athlete: null, access: 'write' });
      let count = 0;
      for (const sql of [
        "'",
        `' OR '1'='1`,
        `'; DROP TABLE records; --`,
        '"; DELETE FROM changes',
        '%',
        '$1',
        '?',
        '\\',
      ]) {
        expect(await store.record(sql, 'weigh-c1')).toBeNull();
        expect(await store.record('ann', sql)).toBeNull();
        for (const query of [{ athlete: sql }, { from: sql, athlete: sql }, { athlete: sql, after: sql }])
          expect(await store.records(query)).toEqual([]);
        expect((await store.snapshot(null, 9, sql)).records).toEqual([]);
        expect(await store.changesSince(0, 9, sql)).toMatchObject({ changes: [] });
        expect(await store.deviceByToken(sql)).toBeNull();
        await store.putSetting(sql, sql);
        expect(await store.setting(sql)).toBe(sql);
        await store.putCode(sql, 100, { athlete: sql, access: 'read' });
        expect(await store.takeCode(sql, 1)).toEqual({ athlete: sql, access: 'read' });
        const named = { ...device, id: sql, name: sql, origin: sql, tokenHash: sql };
        await store.putDevice(named);
        expect(await store.deviceByToken(sql)).toEqual(named);
        const note = weighIn(`n${count++}`, { note: sql });
        expect(await store.append([note], keep)).toMatchObject([{ outcome: 'stored' }]);
        expect((await store.record('ann', note.record))?.fields).toEqual({ note: sql });
      }
      expect((await store.record('ann', 'weigh-c1'))?.fields).toEqual({ date: '2026-01-02', kg: 80 });
      expect(await store.takeCode('h', 1)).toEqual({ athlete: null, access: 'write' });
      expect(await store.verify()).toEqual([]);
    });

    it('lets a code be used once, before its time is over', async () => {
      expect(await store.takeCode('h', 0)).toBe('none');
      const rights = { athlete: 'ann', access: 'read' } as const;
      await store.putCode('h', 100, rights);
      await store.putCode('late', 50, { athlete: null, access: 'write' });
      expect((await store.waitingCodes(49)).toSorted()).toEqual(['h', 'late']);
      expect(await store.waitingCodes(50)).toEqual(['h']);
      expect(await store.takeCode(null, 50)).toBe('wrong');
      expect(await store.takeCode('h', 99)).toEqual(rights);
      expect(await store.takeCode('h', 99)).toBe('none');
    });

    it('lets no code be used that was made under a clock which was ahead and is right again', async () => {
      const year = 365 * 86_400_000;
      await store.putCode('h', year, { athlete: null, access: 'write' });
      expect(await store.waitingCodes(1)).toEqual([]);
      expect(await store.takeCode('h', 1)).toBe('none');
      expect(await store.takeCode('h', year - 1)).toBe('none');
    });

    it('burns every code after five wrong tries', async () => {
      await store.putCode('h', 100, { athlete: null, access: 'write' });
      for (let i = 0; i < 5; i++) expect(await store.takeCode(null, 1)).toBe('wrong');
      expect(await store.takeCode('h', 1)).toBe('none');
    });

    it('keeps settings and is sound', async () => {
      expect(await store.setting('demo')).toBeNull();
      await store.putSetting('demo', 'yes');
      await store.putSetting('demo', 'no');
      expect(await store.setting('demo')).toBe('no');
      await store.append([weighIn('c1', { kg: 80, note: 'ü ½ 🙂' })], keep);
      expect(await store.verify()).toEqual([]);
      expect(store.id).toMatch(/^\w+$/);
      expect(store.trouble()).toBeNull();
    });
  });
}
