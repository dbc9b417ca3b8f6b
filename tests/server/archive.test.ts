import { join } from 'node:path';
import type { Change } from '@platewright/core/changes/change.ts';
import { formatClock } from '@platewright/core/changes/clock.ts';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { archiveLines, importArchive } from '../../daemon/src/keep/archive.ts';
import { clampAhead } from '../../daemon/src/server/writer.ts';
import { openSqliteStore } from '../../daemon/src/store/sqlite.ts';
import type { Stamp, Store } from '../../daemon/src/store/store.ts';
import { demoSeason } from '../../fixtures/season/generate.ts';
import { useFolder } from '../support/use-folder.ts';
import { change, entryFields } from './fields.ts';

const keep: Stamp = (clock) => clock;

const folder = useFolder();

let source: Store;
let target: Store;
beforeEach(() => {
  source = openSqliteStore(join(folder(), 'source'), 'owner');
  target = openSqliteStore(join(folder(), 'target'), 'owner');
});
afterEach(async () => {
  await source.close();
  await target.close();
});

async function textOf(store: Store): Promise<string> {
  let text = '';
  for await (const line of archiveLines(store)) text += line;
  return text;
}

async function* linesOf(text: string): AsyncGenerator<string> {
  yield* text.trimEnd().split('\n');
}

describe('an archive', () => {
  it('gives the same records, byte for byte, in an empty store', async () => {
    await source.append(demoSeason('2026-03-02'), keep);
    const removed = {
      ...change('r', 'entry', 'entry-r', { removed: true }),
      clock: formatClock(9, 9, 'tab'),
    };
    const odd = change('o', 'day', 'day-o', {
      date: '2026-03-02',
      note: 'ü\u2028"½\\ 🙂\n',
      later: { b: [1, null], a: -0.1e-7 },
    });
    const late = change('l', 'entry', 'entry-r', entryFields('2026-03-02'), 2);
    const empty: Change = { ...change('e', 'day', 'day-e', {}), athlete: 'bob' };
    await source.append([removed, odd, late, empty], keep);
    const text = await textOf(source);
    await importArchive(target, linesOf(text), keep);
    expect(await textOf(target)).toBe(text);
    expect(await target.records({})).toHaveLength((await source.records({})).length);
    expect(await target.verify()).toEqual([]);
    expect(target.id).not.toBe(source.id);
  });

  it('of nothing is a head alone', async () => {
    const text = await textOf(source);
    expect(text).toBe('{"archive":"platewright","records":0,"version":1}\n');
    expect(await importArchive(target, linesOf(text), keep)).toBe(0);
  });

  it('may have gone through an editor, which marks its begin or ends it with empty lines', async () => {
    await source.append([change('a', 'day', 'd', { date: '2026-03-02' })], keep);
    async function* edited() {
      yield* `\ufeff${await textOf(source)}\n\n`.split('\n');
    }
    expect(await importArchive(target, edited(), keep)).toBe(1);
    expect(await textOf(target)).toBe(await textOf(source));
  });

  it('takes a clock that is far ahead as made now', async () => {
    await source.append([change('a', 'day', 'd', { date: '2026-03-02' }, 9e12)], keep);
    await importArchive(target, linesOf(await textOf(source)), clampAhead(5e12, null));
    expect((await target.record('ann', 'd'))?.clocks).toEqual({ date: formatClock(5e12, 0, 'phone') });
  });

  const head = '{"archive":"platewright","records":1,"version":1}';
  const day =
    '{"athlete":"ann","clocks":{"date":"000000000001-0000-a"},"fields":{"date":"2026-03-02"},"id":"d","kind":"day"}';
  it.each([
    ['', /Line 1 .*JSON/],
    ['{}', /Line 1 .*archive/],
    [head.replace(':1}', ':2}'), /Line 1 .*version/],
    [head, /Line 1 .*ends here/],
    [`${head}\n${day.slice(0, -5)}`, /Line 2 .*JSON/],
    [`${head}\n${day.replace('"d"', '"d d"')}`, /Line 2 .*id/],
    [`${head}\n${day.replaceAll('"date"', '""')}`, /Line 2 .*fields/],
    [`${head}\n${day.replaceAll('"date"', `"${'x'.repeat(61)}"`)}`, /Line 2 .*fields/],
    [`${head}\n${day.replace('2026-03-02', '2026-02-30')}`, /Line 2 .*day\.date/],
    [`${head}\n${day.replace('"day"', '"teleport"')}`, /Line 2 .*Update the daemon/],
    [`${head}\n${day.replace('"clocks":{"date"', '"clocks":{"note"')}`, /Line 2 .*no clock/],
    [`${head}\n${day}\n${day}`, /Line 3 .*twice/],
    [`${head}\n${day}\n${day.replace('"d"', '"e"')}`, /Line 3 .*1 records were announced/],
  ])('that is broken is not taken in: %s', async (text, reason) => {
    await expect(importArchive(target, linesOf(text), keep)).rejects.toThrow(reason);
    expect(await target.lastSeq()).toBe(0);
  });
});
