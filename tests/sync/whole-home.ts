import { copyFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { createApp } from '../../daemon/src/server/app.ts';
import { createAthletes } from '../../daemon/src/server/athletes.ts';
import { createHub } from '../../daemon/src/server/hub.ts';
import { createKeys } from '../../daemon/src/server/keys.ts';
import { silent } from '../../daemon/src/server/log.ts';
import { createRoster } from '../../daemon/src/server/roster.ts';
import { createSeasons } from '../../daemon/src/server/seasons.ts';
import { newToken, sha256 } from '../../daemon/src/server/secrets.ts';
import { noProxy } from '../../daemon/src/server/site.ts';
import { createWriter } from '../../daemon/src/server/writer.ts';
import { openSqliteStore, STORE_FILE } from '../../daemon/src/store/sqlite.ts';
import { replaceStore } from '../../daemon/src/store/sqlite-restore.ts';
import type { Store } from '../../daemon/src/store/store.ts';
import { httpDaemon } from '../../extension/replica/http.ts';
import { EXTENSION } from '../support/extension-origin.ts';
import type { Home } from './home.ts';
import { scratchFolder } from './scratch.ts';

const ADDRESS = 'http://127.0.0.1:8787';

/** A store on disk, as the simulated world needs it. */
export interface Keeper {
  open(): Promise<Store>;
  /** Copies the open store; what is returned puts the copy in the place of the store, which is closed then. */
  backup(store: Store): Promise<(named: 'anew' | 'the same') => Promise<void>>;
  remove(): void;
}

/** The whole daemon but its socket, on a store on disk, and requests as the extension makes them. */
export async function wholeHome(now: () => number, keeper: Keeper = sqliteKeeper()): Promise<Home> {
  let store = await keeper.open();
  let app = appOf(store, now);
  let devices = 0;
  return {
    async pair(rights) {
      devices += 1;
      const [id, token] = [`device${devices}`, newToken()];
      const paired = { name: id, kind: 'extension', origin: EXTENSION, rights, pairedAt: now() } as const;
      await store.putDevice({ ...paired, id, tokenHash: sha256(token), lastSeenAt: null, revokedAt: null });
      return {
        store: store.id,
        rights,
        daemon: httpDaemon({
          address: ADDRESS,
          token,
          fetch: async (url, { headers, ...init }) => {
            const from = { host: new URL(ADDRESS).host, origin: EXTENSION };
            const all = { ...Object.fromEntries(new Headers(headers)), ...from };
            return await app.request(url, { ...init, headers: all }, {});
          },
        }),
        async revoke() {
          const device = (await store.devices()).find((one) => one.id === id);
          if (device !== undefined) await store.putDevice({ ...device, revokedAt: now() });
        },
      };
    },
    async fold(seq) {
      await store.fold(seq);
    },
    lastSeq: () => store.lastSeq(),
    records: () => store.records({}),
    async logged() {
      const end = await store.lastSeq();
      for (let seq = 0; seq <= end; seq += 1) {
        const page = await store.changesSince(seq, end + 1);
        if (page !== 'folded') return page.changes.map(({ id }) => id);
      }
      return [];
    },
    async backup() {
      const restore = await keeper.backup(store);
      return async (named) => {
        await store.close();
        await restore(named);
        store = await keeper.open();
        app = appOf(store, now);
      };
    },
    async close() {
      const faults = await store.verify();
      await store.close();
      keeper.remove();
      if (faults.length > 0) throw new Error(faults.join('\n'));
    },
  };
}

/** A store of SQLite in a folder of its own. */
function sqliteKeeper(): Keeper {
  const { path: folder, remove } = scratchFolder();
  const data = join(folder, 'data');
  let copies = 0;
  return {
    open: async () => openSqliteStore(data, 'owner'),
    async backup(store) {
      copies += 1;
      const copy = join(folder, `copy-${copies}.sqlite`);
      await store.backup(copy);
      return async (named) => {
        copies += 1;
        if (named === 'anew') {
          await replaceStore(copy, data, join(folder, `replaced-${copies}.sqlite`));
          return;
        }
        for (const end of ['-wal', '-shm']) rmSync(join(data, `${STORE_FILE}${end}`), { force: true });
        copyFileSync(copy, join(data, STORE_FILE));
      };
    },
    remove,
  };
}

function appOf(store: Store, now: () => number) {
  const hub = createHub(0);
  const [athletes, seasons] = [createAthletes(store), createSeasons(store)];
  const held = { athletes, seasons, roster: createRoster({ store, athletes, seasons, now }) };
  const parts = { store, hub, writer: createWriter({ store, now, hub }), ...held, now };
  const keys = createKeys({ store, hub, log: silent, now });
  const open = {
    keys,
    files: '',
    isOwnHost: () => true,
    front: noProxy,
    key: '',
    paired: () => undefined,
    pages: null,
  };
  return createApp({ ...parts, ...open });
}
