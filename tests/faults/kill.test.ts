import { setTimeout as wait } from 'node:timers/promises';
import type { Change } from '@platewright/core/changes/change.ts';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { pairExtension } from './daemon-process.ts';
import { checkStore, Load, sendAgain } from './load.ts';
import { useMachine } from './machine.ts';

/** FAULT_KILLS asks for more of them. */
const KILLS = Number(process.env.FAULT_KILLS ?? 200);
const PUSHERS = 4;
const BATCH = 5;

const machine = useMachine();

const PATIENCE_MS = KILLS * 5000;

it(`killed ${KILLS} times it loses nothing it acknowledged, and a retry doubles nothing`, {
  timeout: PATIENCE_MS,
}, async () => {
  const moments = fc.sample(fc.integer({ min: 1, max: 60 }), { numRuns: KILLS, seed: 20260302 });
  let daemon = await machine().start();
  const headers = await pairExtension(daemon);
  const sent: Change[] = [];
  const told = new Set<string>();
  const ups: number[] = [];
  let untold = 0;
  for (const [round, moment] of moments.entries()) {
    const load = new Load(daemon.url, headers);
    const pushers = Array.from({ length: PUSHERS }, (_, i) => load.keepPushing(`c-${round}-${i}`, BATCH));
    await wait(moment);
    await daemon.stop('SIGKILL');
    const down = performance.now();
    await Promise.all(pushers);
    daemon = await machine().start();
    ups.push(performance.now() - down);
    const again = new Load(daemon.url, headers);
    untold += await sendAgain(load, again);
    sent.push(...load.sent);
    for (const id of again.told.keys()) told.add(id);
  }
  await daemon.stop('SIGTERM');

  expect(told.size).toBe(sent.length);
  await checkStore(machine().data, sent, told);
  expect(machine().run('doctor').stdout).toContain('all sound');
  const slowest = Math.max(...ups).toFixed(0);
  console.log(
    `${KILLS} kills, ${sent.length} changes, ${untold} stored but not told; up again in ${slowest} ms at most`,
  );
});
