/** What `npm start` runs: builds what is missing or older than its sources, then starts the daemon as it was built. */
import { createRequire } from 'node:module';
import { resolve } from 'node:path';
import { type Build, buildStale } from './build.ts';
import { note } from './command.ts';

const ROOT = resolve(import.meta.dirname, '../../..');
const SHARED = ['shared-core', 'package-lock.json'];

const MAIN = 'daemon/dist/cli/main.cjs';

const builds: readonly Build[] = [
  {
    name: 'daemon',
    sources: [...SHARED, 'daemon/src', 'daemon/build', 'daemon/vite.config.ts'],
    result: MAIN,
    command: ['node_modules/vite/bin/vite.js', 'build', 'daemon', '--logLevel', 'warn'],
  },
  {
    name: 'dashboard',
    sources: [...SHARED, 'daemon/dashboard'],
    result: 'daemon/dashboard/dist/index.html',
    command: ['node_modules/vite/bin/vite.js', 'build', 'daemon/dashboard', '--logLevel', 'warn'],
  },
  {
    name: 'extension',
    sources: [...SHARED, 'extension'],
    result: 'extension/.output/chrome-mv3/manifest.json',
    command: ['node_modules/wxt/bin/wxt.mjs', 'build', 'extension'],
  },
];

// As CommonJS, which it is built as too, it can't await here.
void buildStale(ROOT, builds).then((failed) => {
  if (failed.length > 0) {
    note(`The ${failed.join(' and the ')} could not be built; the reason stands above.`);
    process.exitCode = 1;
    return;
  }
  const typed = process.argv.slice(2);
  const rest = typed.filter((word) => word !== '--demo');
  process.argv.splice(2, typed.length, typed.includes('--demo') ? 'demo' : 'start', ...rest);
  createRequire(import.meta.url)(resolve(ROOT, MAIN));
});
