/**
 * Prints how well the weekly call and the baselines steer virtual athletes.
 *   --athletes 500  --seed 1  --world usual|all|…  --scenario gain|loss|hold-gain|clean|messy|…  --controller call
 */
import { availableParallelism } from 'node:os';
import { parseArgs } from 'node:util';
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';
import { closedLoop } from './closed-loop.ts';
import { controllers } from './controllers.ts';
import { athlete } from './population.ts';
import { scenarios } from './scenarios.ts';
import { addTally, nothingTallied, type Row, rowOf, type Tally, tallyRun } from './score.ts';
import { worlds } from './variants.ts';

interface Job {
  world: string;
  scenario: string;
  controller: string;
  seed: number;
  from: number;
  to: number;
}

function runJobs(jobs: readonly Job[]): { job: Job; tally: Tally; ms: number }[] {
  return jobs.map((job) => {
    const world = worlds[job.world];
    const scenario = scenarios.find((candidate) => candidate.name === job.scenario);
    const controller = controllers[job.controller];
    if (!world || !scenario || !controller) throw new Error(`unknown job ${JSON.stringify(job)}`);
    const tally = nothingTallied();
    const start = performance.now();
    for (let number = job.from; number < job.to; number++)
      tallyRun(tally, closedLoop(athlete(number, job.seed, world), scenario, world, controller));
    return { job, tally, ms: performance.now() - start };
  });
}

async function main(): Promise<void> {
  const { values } = parseArgs({
    options: {
      athletes: { type: 'string', default: '500' },
      seed: { type: 'string', default: '1' },
      world: { type: 'string', default: 'usual' },
      scenario: { type: 'string', default: '' },
      controller: { type: 'string', default: '' },
    },
  });
  const athletes = Number(values.athletes);
  const seed = Number(values.seed);
  const chosenWorlds = values.world === 'all' ? Object.keys(worlds) : [values.world];
  const words = values.scenario.split(' ').filter((word) => word !== '');
  const chosenScenarios = scenarios.filter(({ name }) =>
    words.every((word) => name.split(' ').includes(word)),
  );
  const chosenControllers = Object.keys(controllers).filter((name) => name.includes(values.controller));
  const threads = availableParallelism();
  for (const world of chosenWorlds) {
    const jobs = chosenScenarios.flatMap((scenario) =>
      chosenControllers.map((controller) => ({ world, scenario: scenario.name, controller, seed })),
    );
    const parts = Array.from({ length: threads }, (_, thread) =>
      jobs.map((job) => ({
        ...job,
        from: Math.floor((athletes * thread) / threads),
        to: Math.floor((athletes * (thread + 1)) / threads),
      })),
    );
    const results = (await Promise.all(parts.map(inWorker))).flat();
    console.log(`\nworld: ${world}, ${athletes} athletes, seed ${seed}`);
    for (const { name } of chosenScenarios) {
      console.log(`\n${name}\n${HEAD}`);
      for (const controller of chosenControllers) {
        const tally = nothingTallied();
        let ms = 0;
        for (const result of results) {
          if (result.job.scenario !== name || result.job.controller !== controller) continue;
          addTally(tally, result.tally);
          ms += result.ms;
        }
        console.log(line(controller, rowOf(tally), ms / athletes));
      }
    }
  }
}

function inWorker(jobs: readonly Job[]): Promise<{ job: Job; tally: Tally; ms: number }[]> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL(import.meta.url), { workerData: jobs });
    worker.once('message', resolve);
    worker.once('error', reject);
  });
}

const COLUMNS: readonly [title: string, pick: (row: Row) => number, digits: number][] = [
  ['in band', (row) => row.inBand, 1],
  ['doses', (row) => row.doses, 1],
  ['changes', (row) => row.changes, 1],
  ['reversals', (row) => row.reversals, 1],
  ['chg in band', (row) => row.changesInBand, 1],
  ['<1 g/kg', (row) => row.low, 0],
  ['M 4 wk', (row) => row.maintenance4, 0],
  ['M 8 wk', (row) => row.maintenance8, 0],
  ['M 90 %', (row) => row.maintenanceCover, 0],
  ['pace err', (row) => row.paceError, 3],
  ['pace bias', (row) => row.paceBias, 3],
  ['pace 90 %', (row) => row.paceCover, 0],
  ['expect err', (row) => row.expectedError, 3],
  ['expect 90 %', (row) => row.expectedCover, 0],
];

const HEAD = [
  '| controller'.padEnd(34),
  ...COLUMNS.map(([title]) => title.padStart(11)),
  'ms'.padStart(7),
  '',
].join('| ');

function line(controller: string, row: Row, ms: number): string {
  const cells = COLUMNS.map(([, pick, digits]) => {
    const value = pick(row);
    return (Number.isFinite(value) ? value.toFixed(digits) : '–').padStart(11);
  });
  return [`| ${controller}`.padEnd(34), ...cells, ms.toFixed(1).padStart(7), ''].join('| ');
}

if (isMainThread) await main();
else parentPort?.postMessage(runJobs(workerData));
