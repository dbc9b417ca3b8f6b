import { expect, it } from 'vitest';
import { readAhead } from '../../extension/replica/read-ahead.ts';
import type { Daemon } from '../../extension/replica/sync.ts';

const rights = { athlete: null, access: 'write' } as const;

/** A log of so many changes, a daemon whose clock is the test's, and what it was asked for. */
function logOf(end: number) {
  const asked: number[] = [];
  const clock = { now: 1000 };
  const daemon: Daemon = {
    push: () => Promise.reject(new Error('not asked')),
    snapshot: () => Promise.reject(new Error('not asked')),
    async pull({ seq }, limit) {
      asked.push(seq);
      const to = Math.min(end, seq + limit);
      const head = { store: 's', protocol: 1, now: clock.now, rights };
      return { ok: true, value: { ...head, seq: to, mark: `m${to}`, changes: [], more: to < end } };
    },
  };
  return { asked, clock, ahead: readAhead(daemon, () => clock.now) };
}

const place = (seq: number) => ({ seq, mark: seq === 0 ? '' : `m${seq}`, reached: null });

it('asks for the next page at once, hands it out when it is asked for, and asks for none after the last', async () => {
  const { asked, ahead } = logOf(5);
  await ahead.pull(place(0), 2);
  expect(asked).toEqual([0, 2]);
  await ahead.pull(place(2), 2);
  expect(asked).toEqual([0, 2, 4]);
  expect(await ahead.pull(place(4), 2)).toMatchObject({ value: { seq: 5, more: false } });
  expect(asked).toEqual([0, 2, 4]);
});

it.each([
  { otherwise: 'another place', from: place(1), limit: 2 },
  { otherwise: 'another mark', from: { ...place(2), mark: 'x' }, limit: 2 },
  { otherwise: 'a place that was reached', from: { ...place(2), reached: place(9) }, limit: 2 },
  { otherwise: 'another size', from: place(2), limit: 3 },
])('asks anew when $otherwise is wanted', async ({ from, limit }) => {
  const { asked, ahead } = logOf(9);
  await ahead.pull(place(0), 2);
  await ahead.pull(from, limit);
  expect(asked.slice(0, 3)).toEqual([0, 2, from.seq]);
});

it('lets the daemon’s time in a page go on until it is handed out', async () => {
  const { clock, ahead } = logOf(5);
  await ahead.pull(place(0), 2);
  await Promise.resolve();
  clock.now += 700;
  expect(await ahead.pull(place(2), 2)).toMatchObject({ value: { now: 1700 } });
});
