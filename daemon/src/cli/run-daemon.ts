import { resolve } from 'node:path';
import { issueCode } from '../server/issue-code.ts';
import { serve } from '../server/serve.ts';
import type { Store } from '../store/store.ts';
import { CommandTrouble, note, say } from './command.ts';

const ROOT = resolve(import.meta.dirname, '../../..');
const PAGES = resolve(ROOT, 'daemon/dashboard/dist');
const EXTENSION = resolve(ROOT, 'extension/.output/chrome-mv3');

/** Name of the setting under which other commands find the port. */
export const PORT_SETTING = 'port';

/** Serves a store until the process is told to stop; `lastLine` ends what it says to do next. */
export async function runDaemon(store: Store, port: number, lastLine: string): Promise<void> {
  const running = await serve({ store, port, pages: PAGES, now: Date.now }).catch(async (error) => {
    await store.close();
    throw portTrouble(error, port);
  });
  if (store.trouble() === null) {
    await store.putSetting(PORT_SETTING, String(running.port));
    await sayWhatNext(store, running.port, lastLine);
  } else
    note(`It is served to be read at http://127.0.0.1:${running.port}/, to those who are paired already.`);
  await told();
  note('Stopping…');
  await running.stop();
}

export function dashboardLink(port: number, code: string): string {
  return `http://127.0.0.1:${port}/#pair=${code}`;
}

async function sayWhatNext(store: Store, port: number, lastLine: string): Promise<void> {
  const now = Date.now();
  const page = await issueCode(store, now);
  const browser = await issueCode(store, now);
  say(`1. Open the dashboard: ${dashboardLink(port, page.code)}`);
  say(
    `2. Load the extension from ${EXTENSION} (chrome://extensions, developer mode), and pair it with the code ${browser.code}`,
  );
  say(`3. ${lastLine}`);
  note('Link and code are good once, for ten minutes; npx platewright pair makes another. Stop with Ctrl-C.');
}

/** Resolves at the first SIGINT or SIGTERM; a second one ends the process at once. */
function told(): Promise<void> {
  return new Promise((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) {
      process.once(signal, () => {
        process.once(signal, () => process.exit(1));
        resolve();
      });
    }
  });
}

function portTrouble(error: unknown, port: number): unknown {
  if (!(error instanceof Error) || !('code' in error)) return error;
  if (error.code === 'EADDRINUSE') {
    return new CommandTrouble(
      `Port ${port} is taken. Stop the program that uses it, or name another port with --port.`,
    );
  }
  if (error.code === 'EACCES') {
    return new CommandTrouble(`Port ${port} is not for this user. Name one from 1024 up with --port.`);
  }
  return error;
}
