import { resolve } from 'node:path';
import { bytesFolder } from '../keep/bytes.ts';
import { issueCode } from '../server/issue-code.ts';
import { type Log, silent } from '../server/log.ts';
import { serve } from '../server/serve.ts';
import type { Store, StoredDevice } from '../store/store.ts';
import { CommandTrouble, note, say } from './command.ts';
import { saveCompiled } from './compiled.ts';
import { keepAddresses, pairingLink, pairingText } from './known-addresses.ts';
import { keepLan, lanAddresses, networkOf, sayLan } from './lan.ts';
import type { NetworkSettings } from './network-settings.ts';
import { holdLittle } from './node-flags.ts';

const ROOT = resolve(import.meta.dirname, '../../..');
const PAGES = resolve(ROOT, 'daemon/dashboard/dist');
const EXTENSION = resolve(ROOT, 'extension/.output/chrome-mv3');

interface RunSettings {
  port: number;
  /** Folder of the store, where a certificate and files are kept too; absolute. */
  data: string;
  /** What leads other commands to this store; see optionsFor. */
  options: string;
  network: NetworkSettings;
  log?: Log;
  /** Ends what is said to do next. */
  lastLine: string;
}

/** Serves a store until the process is told to stop. */
export async function runDaemon(
  store: Store,
  { lastLine, log = silent, ...rest }: RunSettings,
): Promise<void> {
  const { data, options, network } = rest;
  const running = await startServing(store, { ...rest, log });
  const { page, lan } = running.addresses;
  const endLan = await keepLan(running, network, { folder: data, store });
  try {
    if (store.trouble() === null) {
      await keepAddresses(store, running.addresses);
      await sayWhatNext(store, page, { lastLine, options });
      if (lan !== null) await sayLan(lan, (await issueCode(store, Date.now())).code);
    } else note(`It is served to be read at ${page}, to those who are paired already.`);
    saveCompiled();
    await holdLittle();
    log('info', 'started', { port: running.port });
    await told();
    log('info', 'stopping');
    note('Stopping…');
  } finally {
    endLan();
    // A daemon that could not say its code would otherwise go on, with nobody able to pair.
    await running.stop();
  }
}

async function startServing(
  store: Store,
  { port, data, options, network: settings, log }: Omit<RunSettings, 'lastLine'> & { log: Log },
) {
  try {
    const network = await networkOf(settings, data);
    const paired = network.lan === null ? undefined : tellPairedWith(options);
    const running = await serve({
      store,
      port,
      pages: PAGES,
      files: bytesFolder(data),
      now: Date.now,
      network,
      log,
      ...(paired && { paired }),
    });
    const page = `http://127.0.0.1:${running.port}${network.front.basePath}/`;
    return { ...running, addresses: { page, lan: lanAddresses(network, running.lanPort) } };
  } catch (error) {
    await store.close();
    throw portTrouble(error);
  }
}

function tellPairedWith(options: string) {
  return ({ kind, id }: StoredDevice, check: string): void =>
    note(
      `Paired: ${kind} ${id}. It shows the check ${check}; if not, run npx platewright devices revoke ${id}${options}.`,
    );
}

async function sayWhatNext(
  store: Store,
  address: string,
  { lastLine, options }: Pick<RunSettings, 'lastLine' | 'options'>,
): Promise<void> {
  const now = Date.now();
  // One after the other, because each takes a processor and 32 MB for a tenth of a second.
  const page = await issueCode(store, now);
  say(`1. Open the dashboard: ${pairingLink(address, page.code)}`);
  const browser = await issueCode(store, now);
  say(
    `2. Load the extension from ${EXTENSION} (chrome://extensions, developer mode), and pair it by typing ${pairingText(address, browser.code)}`,
  );
  say(`3. ${lastLine}`);
  note(
    `Link and code are good once, for ten minutes; npx platewright pair${options} makes another. Stop with Ctrl-C.`,
  );
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

function portTrouble(error: unknown): unknown {
  if (!(error instanceof Error) || !('code' in error)) return error;
  const port = 'port' in error ? error.port : '';
  if (error.code === 'EADDRINUSE') {
    return new CommandTrouble(
      `Port ${port} is taken. Stop the program that uses it, or name another port with --port (--lan-port).`,
    );
  }
  if (error.code === 'EACCES') {
    return new CommandTrouble(
      `Port ${port} is not for this user. Name one from 1024 up with --port (--lan-port).`,
    );
  }
  return error;
}
