import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { digest, live } from './history.ts';

const HISTORIES = 20_000;
const SOAK = join(import.meta.dirname, 'soak.ts');

/** Runs the soak as a program of its own, which takes half the time that it takes in the test runner. */
async function soak(...args: string[]): Promise<string> {
  const child = spawn(process.execPath, [SOAK, ...args], { stdio: ['ignore', 'pipe', 'pipe'] });
  let said = '';
  for (const stream of [child.stdout, child.stderr]) stream.on('data', (text) => (said += text));
  const [code] = await once(child, 'close');
  if (code !== 0) throw new Error(said);
  return said;
}

it(`devices and daemon end with the same records in ${HISTORIES} histories of faults`, async () => {
  const half = HISTORIES / 2;
  const parts = [1, 1 + half].map((seed) => soak('--histories', `${half}`, '--seed', `${seed}`));
  for (const said of await Promise.all(parts)) expect(said).toMatch(`${half} histories hold`);
}, 600_000);

it('a seed gives the same history again, bit for bit, here and in another program', async () => {
  for (const seed of [7, 97]) {
    const once = await digest(await live(seed));
    expect(await digest(await live(seed))).toBe(once);
    expect(await soak('--histories', '1', '--seed', `${seed}`)).toContain(`seed ${seed} comes to ${once}`);
  }
  expect(await digest(await live(8))).not.toBe(await digest(await live(7)));
});
