/** Runs in a page of the extension: the replica's own pull, and a bare write of the same rows. See `pull.ts`. */
import '../../extension/platform/without-eval.ts';
import { source } from '../../extension/platform/source.ts';
import { Database } from '../../extension/replica/database.ts';
import { dexieReplica } from '../../extension/replica/dexie-replica.ts';
import { httpDaemon, type Line } from '../../extension/replica/http.ts';
import { readAhead } from '../../extension/replica/read-ahead.ts';
import type { RecordRow } from '../../extension/replica/rows.ts';
import { sync } from '../../extension/replica/sync.ts';

const heard = new Map<string, string>();
let rows: RecordRow[] = [];

/** What a page may be asked for; each answers with ms. */
const asked = {
  /** Pulls all that the daemon has into a new replica. */
  fromDaemon: (address: string, token: string) =>
    pull(address, token, async (url, init) => {
      const response = await fetch(url, init);
      if (!heard.has(url)) heard.set(url, await response.clone().text());
      return response;
    }),
  /** The same from the answers that were heard before, so without the daemon's own work. */
  fromAnswers: (address: string, token: string) =>
    pull(address, token, async (url) => new Response(heard.get(url))),
  /** Puts the rows of the first pull into a new table of the same kind, all at once. */
  barePut: () =>
    inNewDatabase(async (database) => {
      const start = performance.now();
      await database.records.bulkPut(rows);
      return performance.now() - start;
    }),
  rowCount: async () => rows.length,
};

function pull(address: string, token: string, fetch: Line['fetch']): Promise<number> {
  return inNewDatabase(async (database) => {
    const daemon = readAhead(httpDaemon({ address, token, fetch }), source.now);
    const start = performance.now();
    const end = await sync({ ...source, replica: dexieReplica(database), daemon });
    const ms = performance.now() - start;
    if (end.state !== 'done') throw new Error(end.detail);
    if (rows.length === 0) rows = await database.records.toArray();
    return ms;
  });
}

async function inNewDatabase(work: (database: Database) => Promise<number>): Promise<number> {
  const database = new Database('bench');
  await database.delete();
  await database.open();
  const ms = await work(database);
  database.close();
  return ms;
}

Object.assign(globalThis, asked);
