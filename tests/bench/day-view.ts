import { type FullDaemon, fullDaemon } from './full-daemon.ts';
import { type Compared, median, printTable } from './table.ts';
import { BENCH_ATHLETE } from './years.ts';

const FOODS = 500;
const YEARS = [1, 20] as const;
const ROUNDS = 200;
const WARM_UP = 20;

/** Asks two daemon processes for today's view, in turns: what a day costs must not grow with the years behind it. */
export async function benchDayView(): Promise<Compared[]> {
  const daemons = await Promise.all(YEARS.map((years) => fullDaemon(years, FOODS)));
  const times = daemons.map((): number[] => []);
  for (let round = 0; round < ROUNDS + WARM_UP; round++) {
    for (const [i, full] of daemons.entries()) {
      const time = await timeOfView(full);
      if (round >= WARM_UP) times[i]?.push(time);
    }
  }
  for (const full of daemons) await full.close();
  const [one = Number.NaN, twenty = Number.NaN] = times.map(median);
  const what = 'GET /v1/views/day after 20 years';
  return [{ what, unit: 'ms', ours: twenty, reference: 'the same after 1 year', theirs: one }];
}

async function timeOfView({ daemon, headers }: FullDaemon): Promise<number> {
  const start = performance.now();
  const answer = await fetch(`${daemon.url}/v1/views/day?athlete=${BENCH_ATHLETE}`, { headers });
  await answer.text();
  if (!answer.ok) throw new Error(`the day view was answered with ${answer.status}`);
  return performance.now() - start;
}

if (import.meta.main) printTable(await benchDayView());
