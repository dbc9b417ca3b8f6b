/** What `npm run soak` runs: many more histories of the simulated world, then many more kills of a real daemon. */
import { spawnSync } from 'node:child_process';
import { resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { digest, live } from './history.ts';

const { values } = parseArgs({
  options: {
    histories: { type: 'string', default: '100000' },
    /** Lives these histories again, and kills nothing. */
    seed: { type: 'string' },
    kills: { type: 'string', default: '1000' },
  },
});

async function liveAll(first: number, histories: number): Promise<void> {
  const began = performance.now();
  for (let seed = first; seed < first + histories; seed += 1) {
    const world = await live(seed);
    if (seed > first && (seed - first) % 10_000 === 0) console.log(`${seed - first} histories so far`);
    if (seed === first) console.log(`seed ${seed} comes to ${await digest(world)}`);
  }
  const ms = performance.now() - began;
  console.log(`${histories} histories hold, ${(ms / histories).toFixed(2)} ms each`);
}

/** Kills a daemon under load so many times, by the test that does so with fewer. Returns its exit code. */
function killAll(kills: string): number {
  const root = resolve(import.meta.dirname, '../..');
  const vitest = resolve(root, 'node_modules/vitest/vitest.mjs');
  const test = ['run', '--config', 'tests/vitest.config.ts', 'tests/faults/kill.test.ts'];
  const env = { ...process.env, FAULT_KILLS: kills };
  return spawnSync(process.execPath, [vitest, ...test], { cwd: root, env, stdio: 'inherit' }).status ?? 1;
}

await liveAll(Number(values.seed ?? 1), Number(values.histories));
if (values.seed === undefined && values.kills !== '0') process.exitCode = killAll(values.kills);
