import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { expect, it } from 'vitest';
import { faults } from './faults.ts';
import { planted } from './plant.ts';

const ROOT = join(import.meta.dirname, '../../..');

it.each(faults)('there is a place for the fault: $says', (fault) => {
  const source = readFileSync(join(ROOT, fault.file), 'utf8');
  expect(planted(fault, source)).not.toBe(source);
});

it('the simulated world notices each planted fault within 1,000 seeds', async () => {
  const child = spawn(process.execPath, [join(import.meta.dirname, 'hunt.ts')], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const found = new Map<string, number | null>();
  for await (const line of createInterface({ input: child.stdout })) {
    const { says, seed } = JSON.parse(line);
    found.set(says, seed);
  }
  expect([...found.keys()]).toEqual(faults.map(({ says }) => says));
  expect([...found].filter(([, seed]) => seed === null)).toEqual([]);
}, 300_000);
