import { readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { localDate } from '@platewright/core/season/local-date.ts';
import { demoDay, demoSeason } from '../../../fixtures/season/generate.ts';
import { createHub } from '../server/hub.ts';
import { createWriter } from '../server/writer.ts';
import { DEMO_SETTING } from '../store/setting-row.ts';
import { openSqliteStore, STORE_FILE } from '../store/sqlite.ts';
import type { Store } from '../store/store.ts';
import { type Command, CommandTrouble, note } from './command.ts';
import { loopbackOnly } from './network-settings.ts';
import { runDaemon } from './run-daemon.ts';
import { dataOption, demoSettings, optionsFor, PORTS } from './settings.ts';

export const demo: Command = {
  name: 'demo',
  operands: '',
  mostOperands: 0,
  options: { ...dataOption, port: { type: 'string' } },
  help: `  npx platewright demo
  npx platewright demo --port 9001

The season ends today. It is kept in $XDG_DATA_HOME/platewright-demo, apart from your own records, and served on port
${PORTS.demo} unless --port names another one.`,
  place: (given) => ({ data: demoSettings(given).data, store: null }),
  async run(given) {
    const { data, port } = demoSettings(given);
    // Undefined where the machine names none that is known.
    const timeZone = Intl.DateTimeFormat().resolvedOptions().timeZone || 'UTC';
    const store = await demoStore(data, { timeZone, date: localDate(Date.now(), demoDay(timeZone)) });
    await runDaemon(store, {
      ...{ port, data, network: loopbackOnly, options: optionsFor({ data, store: null }) },
      lastLine: 'All of this is invented. npm start begins your own season.',
    });
  },
};

/** The last date of the season, and the time zone that its athlete lives in. */
interface End {
  date: string;
  timeZone: string;
}

async function demoStore(folder: string, end: End): Promise<Store> {
  const store = openSqliteStore(folder, 'owner');
  const endsOn = await store.setting(DEMO_SETTING);
  if (endsOn === null && (await store.lastSeq()) > 0) {
    await store.close();
    throw new CommandTrouble(`${folder} holds records of your own. Name another folder with --data.`);
  }
  if (endsOn === end.date) return store;
  if (endsOn === null) return await filled(store, end);
  return await renewed(store, folder, end);
}

/** A season that ended earlier is made anew, unless an extension holds a copy that it would send back into it. */
async function renewed(store: Store, folder: string, end: End): Promise<Store> {
  const devices = await store.devices();
  if (devices.some(({ kind, revokedAt }) => kind === 'extension' && revokedAt === null)) {
    note(
      `This season ended some days ago. For a fresh one take back the key of the extension on the Devices page, and start again.`,
    );
    return store;
  }
  await store.close();
  for (const name of readdirSync(folder)) if (name.startsWith(STORE_FILE)) rmSync(join(folder, name));
  const fresh = openSqliteStore(folder, 'owner');
  for (const device of devices) await fresh.putDevice(device);
  return await filled(fresh, end);
}

async function filled(store: Store, { date, timeZone }: End): Promise<Store> {
  note('Inventing a season…');
  await store.putSetting(DEMO_SETTING, date);
  const writer = createWriter({ store, now: Date.now, hub: createHub(0) });
  await writer.push(demoSeason(date, { timeZone }));
  return store;
}
