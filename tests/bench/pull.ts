import { cpSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { build } from 'vite';
import { BUILT_EXTENSION, loadExtension } from '../support/extension.ts';
import { fullDaemon } from './full-daemon.ts';
import { type Compared, median, printTable } from './table.ts';

/** Somewhat more than 10,000 changes, with the starter larder that the daemon gives an athlete. */
const YEARS = 1.4;
const FOODS = 100;
const ROUNDS = 11;
const CONTENDERS = ['fromDaemon', 'fromAnswers', 'barePut'] as const;

/**
 * A new browser's first pull by the extension's own code in a page of it in Chromium: heard from a daemon or from kept
 * answers, parsed, checked, merged and written to IndexedDB; and one bare Dexie bulkPut of the rows that come of it. In
 * turns, each time into a new database.
 */
export async function benchPull(): Promise<Compared[]> {
  const folder = mkdtempSync(join(tmpdir(), 'platewright-bench-'));
  cpSync(BUILT_EXTENSION, folder, { recursive: true });
  await buildPage(folder);
  const full = await fullDaemon(YEARS, FOODS);
  const extension = await loadExtension(folder);
  try {
    const page = await extension.context.newPage();
    await page.goto(`chrome-extension://${extension.id}/pull.html`);
    const token = full.headers.authorization?.replace('Bearer ', '') ?? '';
    const ask = (name: string): Promise<number> =>
      page.evaluate(
        ([called = '', ...given]) => Reflect.get(globalThis, called)(...given),
        [name, full.daemon.url, token],
      );
    const times = CONTENDERS.map((): number[] => []);
    for (const name of CONTENDERS) await ask(name);
    for (let round = 0; round < ROUNDS; round++) {
      for (let i = 0; i < CONTENDERS.length; i++) {
        const place = (i + round) % CONTENDERS.length;
        times[place]?.push(await ask(CONTENDERS[place] ?? ''));
      }
    }
    const [fromDaemon = Number.NaN, fromAnswers = Number.NaN, theirs = Number.NaN] = times.map(median);
    const compared = { unit: 'ms', reference: 'one Dexie bulkPut of the rows', theirs };
    const what = `first pull of ${await ask('rowCount')} changes`;
    return [
      { what: `${what}, from a daemon`, ours: fromDaemon, ...compared },
      { what: `${what}, from kept answers`, ours: fromAnswers, ...compared },
    ];
  } finally {
    await extension.close();
    await full.close();
    rmSync(folder, { recursive: true });
  }
}

/** Builds the page with the extension's code in it, as the extension itself is built. */
async function buildPage(folder: string): Promise<void> {
  const entry = resolve(import.meta.dirname, 'pull-page.ts');
  const lib = { entry, formats: ['es' as const], fileName: () => 'pull.js' };
  await build({
    configFile: false,
    logLevel: 'error',
    build: { outDir: folder, emptyOutDir: false, lib },
  });
  const script = '<script type="module" src="pull.js"></script>';
  writeFileSync(
    join(folder, 'pull.html'),
    `<!doctype html><meta charset="utf-8"><title>Pull</title>${script}`,
  );
}

if (import.meta.main) printTable(await benchPull());
