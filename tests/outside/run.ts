/** Holds the product against checkers that others made. Exit code 1 when one of them finds a fault. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Daemon, startDaemon } from '../faults/daemon-process.ts';
import { temporaryFolder } from '../support/folder.ts';
import { freePort } from '../support/port.ts';
import { checkBrowserRun } from './browser-run.ts';
import { checkPolicies } from './csp.ts';
import { lintApi, lintExtension } from './lint.ts';
import { checkAnswers } from './proxy.ts';
import { checkTls } from './tls.ts';
import { installTools } from './tool.ts';

/** Gives the faults that it found, a line each. */
type Check = (place: { daemon: Daemon; lanPort: number; folder: string }) => Promise<readonly string[]>;

const checks: Readonly<Record<string, Check>> = {
  'web-ext lint': lintExtension,
  'redocly lint': lintApi,
  csp_evaluator: checkPolicies,
  'prism proxy': checkAnswers,
  'prism, browser': checkBrowserRun,
  testssl: checkTls,
};

installTools();
const asked = process.argv.slice(2);
const home = temporaryFolder();
const folder = mkdtempSync(join(tmpdir(), 'platewright-outside-'));
const lanPort = await freePort();
const args = ['start', '--port', '0', '--lan', '--lan-port', String(lanPort)];
const daemon = await startDaemon(home.path, args);
try {
  for (const [name, check] of Object.entries(checks)) {
    if (asked.length > 0 && !asked.includes(name)) continue;
    const faults = await check({ daemon, lanPort, folder }).catch((error: unknown) => [String(error)]);
    console.log(`${name.padEnd(16)}${faults.length === 0 ? 'no faults' : `${faults.length} faults`}`);
    for (const fault of faults) console.log(`  ${fault}`);
    if (faults.length > 0) process.exitCode = 1;
  }
} finally {
  await daemon.stop('SIGTERM');
  home.remove();
  rmSync(folder, { recursive: true });
}
