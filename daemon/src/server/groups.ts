import { setImmediate as breathe } from 'node:timers/promises';

/** Items of one group at the most, so that none waits long for the others. */
const MOST_ITEMS = 2000;

interface Call<I, O> {
  items: readonly I[];
  resolve(outcomes: O[]): void;
  reject(error: unknown): void;
}

/**
 * Lets calls that wait at the same time share one run of `work`, and so one flush of the disk. `work` gives an outcome
 * for each item; when it fails for a group, each call is tried by itself, so that only the one at fault fails.
 */
export function createGroups<I, O>(
  inTurn: (work: () => Promise<void>) => Promise<void>,
  work: (items: readonly I[]) => Promise<O[]>,
): (items: readonly I[]) => Promise<O[]> {
  const waiting: Call<I, O>[] = [];

  async function runNext(): Promise<void> {
    if (waiting.length === 0) return;
    // Requests that arrived while the disk was busy are read now.
    await breathe();
    const group = takeGroup(waiting);
    try {
      const outcomes = await work(group.flatMap(({ items }) => items));
      let at = 0;
      for (const { items, resolve } of group) {
        resolve(outcomes.slice(at, at + items.length));
        at += items.length;
      }
    } catch (error) {
      if (group.length === 1) group[0]?.reject(error);
      else for (const call of group) await work(call.items).then(call.resolve, call.reject);
    }
  }

  return (items) =>
    new Promise((resolve, reject) => {
      waiting.push({ items, resolve, reject });
      void inTurn(runNext);
    });
}

function takeGroup<I, O>(waiting: Call<I, O>[]): Call<I, O>[] {
  let count = 0;
  const end = waiting.findIndex(({ items }, i) => {
    count += items.length;
    return i > 0 && count > MOST_ITEMS;
  });
  return waiting.splice(0, end === -1 ? waiting.length : end);
}
