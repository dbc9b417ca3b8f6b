import type { Change } from '@platewright/core/changes/change.ts';
import { formatClock } from '@platewright/core/changes/clock.ts';
import { expect, it } from 'vitest';
import { openSqliteStore } from '../../daemon/src/store/sqlite.ts';
import { Dice } from './dice.ts';
import { MemoryStore, type SyncStore } from './memory-store.ts';
import { scratchFolder } from './scratch.ts';

const SEEDS = 25;
const STEPS = 60;

function newChange(dice: Dice): Change {
  const record = `r${dice.below(6)}`;
  const device = dice.pick(['a', 'b']);
  return {
    id: `c${dice.below(80)}`,
    athlete: dice.pick(['anna', 'bob']),
    device,
    clock: formatClock(dice.below(50), dice.below(2), device),
    kind: dice.happens(0.1) ? 'lift' : 'entry',
    record,
    fields: dice.pick([{ grams: dice.below(9) }, { name: `n${dice.below(9)}` }, { removed: true }]),
  };
}

/** Marks differ between engines; what they tell apart must not. */
const marksOf = (names: Map<string, number>) => (mark: string | null) => {
  if (mark === null || mark === '') return mark;
  names.set(mark, names.get(mark) ?? names.size);
  return names.get(mark);
};

/** The same piece of work on each store must come to the same. */
function workOf(dice: Dice): (store: SyncStore, name: ReturnType<typeof marksOf>) => Promise<unknown> {
  const deed = dice.uniform();
  const [seq, limit] = [dice.below(60), 1 + dice.below(6)];
  const athlete = dice.pick([null, 'anna', 'bob']) ?? undefined;
  if (deed < 0.5) {
    const changes = Array.from({ length: dice.below(4) }, () => newChange(dice));
    return (store) =>
      store.append(changes, (clock) => (clock > '00000000002' ? clock : formatClock(40, 0, 'x')));
  }
  if (deed < 0.7) return (store) => store.changesSince(seq, limit, athlete);
  if (deed < 0.85) {
    const after = dice.pick([null, { athlete: dice.pick(['anna', 'bob']), id: `r${dice.below(6)}` }]);
    return (store) => store.snapshot(after, limit, athlete);
  }
  if (deed < 0.95) return async (store, name) => name(await store.mark(seq));
  if (deed < 0.98) return async (store) => [await store.lastSeq(), await store.latestClock()];
  return (store) => store.fold(Math.floor(seq / 2));
}

it('the store in memory does what the one on disk does', async () => {
  for (let seed = 1; seed <= SEEDS; seed += 1) {
    const dice = new Dice(seed);
    const { path, remove } = scratchFolder();
    const disk = openSqliteStore(path, 'owner');
    const memory = new MemoryStore();
    const [ofDisk, ofMemory] = [marksOf(new Map()), marksOf(new Map())];
    for (let step = 0; step < STEPS; step += 1) {
      const work = workOf(dice);
      expect(await work(memory, ofMemory), `seed ${seed}, step ${step}`).toEqual(await work(disk, ofDisk));
    }
    await disk.close();
    remove();
  }
});
