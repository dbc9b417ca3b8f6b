import { type BackedUp, originOf } from '../keep/backup.ts';
import { restoreAdvice } from '../keep/restore-advice.ts';
import { dropTries } from '../keep/tries.ts';
import { startUpkeep } from '../keep/upkeep.ts';
import { openStore, type StorePlace } from '../store/open.ts';
import type { Store } from '../store/store.ts';
import { StoreTrouble } from '../store/trouble.ts';
import { type Command, note } from './command.ts';
import { chosenLog, logOption } from './log-level.ts';
import { networkOptions, networkSettings } from './network-settings.ts';
import { runDaemon } from './run-daemon.ts';
import { optionsFor, PORTS, serveOptions, settings } from './settings.ts';

export const start: Command = {
  name: 'start',
  operands: '',
  mostOperands: 0,
  options: { ...serveOptions, ...networkOptions, ...logOption },
  help: `  npx platewright start
  npx platewright start --port 9000 --data ~/records
  npx platewright start --lan
  npx platewright start --base-path /plates --host example.org --trusted-proxy 127.0.0.1

It listens on 127.0.0.1 only. With --lan others in your network reach it too, by TLS alone, on port ${PORTS.lan} or --lan-port; the
certificate is made on the first start, unless --cert and --key name files of your own. --host adds a name that it answers
to. Behind a proxy that shows it under a path, --base-path says which; what X-Forwarded-Proto and X-Forwarded-Host say counts
from a --trusted-proxy only. In the config file these are lan, lanPort, cert, key, hosts, basePath and trustedProxies.

Records are kept in $XDG_DATA_HOME/platewright unless --data names another folder, on port
${PORTS.own} unless --port names another one. PLATEWRIGHT_DATA and PLATEWRIGHT_PORT do the same, and so do data and port in
$XDG_CONFIG_HOME/platewright/config.json. --store postgres://… keeps records in a PostgreSQL database (PLATEWRIGHT_STORE,
store). A backup is made each day; the last seven days, four weeks and twelve months are kept in the folder backups beside
the records, or where --backups says (PLATEWRIGHT_BACKUPS, backups).

The log goes to the error output: a line for each event, with nothing of a person in it. --log-level is error, warn, info or
debug (PLATEWRIGHT_LOG_LEVEL); unless told otherwise it is warn.`,
  async run(given) {
    const { data, port, store, backups } = settings(given);
    const network = networkSettings(given);
    const log = chosenLog(given);
    const options = optionsFor({ data, store });
    dropTries(data, Date.now());
    const opened = await openOrAdvise({ data, store }, backups, options);
    await runDaemon(keptUp({ store: opened, data, backups }, options), {
      ...{ port, data, network, log, options },
      lastLine:
        'Only looking? npm start -- --demo shows a finished season of an invented athlete, in a store of its own.',
    });
  },
};

/** Opens the store; when it is damaged, says which backup to go back to, and serves what can still be read. */
async function openOrAdvise(place: StorePlace, backups: string, options: string): Promise<Store> {
  const advice = (origin: string | null) => restoreAdvice(backups, options, Date.now(), origin);
  try {
    const store = await openStore(place, 'owner');
    const trouble = store.trouble();
    if (trouble !== null)
      note(`${trouble.messageWith(options)}\n${await advice(await originOf(store).catch(() => null))}`);
    return store;
  } catch (error) {
    if (error instanceof StoreTrouble && error.code === 'damaged') note(await advice(null));
    throw error;
  }
}

/** The store with its upkeep, which ends when it is closed. */
function keptUp(of: BackedUp, options: string): Store {
  const { store } = of;
  const onTrouble = (error: unknown) => {
    const said = error instanceof Error ? error.message : String(error);
    note(`No whole backup was made: ${error instanceof StoreTrouble ? error.messageWith(options) : said}`);
  };
  const upkeep = startUpkeep({ ...of, now: Date.now, onTrouble });
  return {
    ...store,
    async close() {
      await upkeep.stop();
      await store.close();
    },
  };
}
