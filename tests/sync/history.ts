import { hash } from 'node:crypto';
import { type Home, memoryHome } from './home.ts';
import { checkQuiet } from './invariants.ts';
import { World, WorldClock } from './world.ts';

/** Things that happen in a history before it becomes quiet. */
const STEPS = 32;

type HomeMaker = (now: () => number) => Home | Promise<Home>;

/** Lives the history of a seed to its quiet end, and checks it. Throws with the seed and what does not hold. */
export async function live(seed: number, home: HomeMaker = memoryHome): Promise<World> {
  const clock = new WorldClock();
  const world = new World(seed, clock, await home(() => clock.now));
  try {
    await world.live(STEPS);
    await world.quiet();
    await checkQuiet(world);
    return world;
  } catch (error) {
    throw new Error(`seed ${seed}: ${error instanceof Error ? error.message : error}`, { cause: error });
  } finally {
    await world.home.close();
  }
}

/** All that a history came to, in short: equal only for histories that are equal step for step. */
export async function digest(world: World): Promise<string> {
  const replicas = world.devices.map(({ replica }) => [replica.head(), replica.rows(), replica.outbox()]);
  return hash('sha256', JSON.stringify([world.trace, await world.home.records(), replicas]), 'hex');
}
