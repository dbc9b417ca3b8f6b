import type * as history from '../history.ts';
import { faults } from './faults.ts';
import { plantOnImport } from './plant.ts';

/** Seeds within which a fault must be noticed. */
const SEEDS = 1000;

plantOnImport();
const [from = 0, to = faults.length] = process.argv.slice(2).map(Number);
for (const [number, { says }] of faults.entries()) {
  if (number < from || number >= to) continue;
  const { live }: typeof history = await import(`../history.ts?fault=${number}`);
  console.log(JSON.stringify({ says, ...(await hunt(live)) }));
}

/** The first seed at which the world notices, and how. */
async function hunt(live: typeof history.live): Promise<{ seed: number | null; how: string }> {
  for (let seed = 1; seed <= SEEDS; seed += 1) {
    try {
      await live(seed);
    } catch (error) {
      return { seed, how: error instanceof Error ? error.message.slice(0, 120) : String(error) };
    }
  }
  return { seed: null, how: 'not noticed' };
}
