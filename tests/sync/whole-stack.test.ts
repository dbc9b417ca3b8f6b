import { join } from 'node:path';
import { afterAll, it } from 'vitest';
import { openPostgresStore } from '../../daemon/src/store/postgres.ts';
import { fillDatabase } from '../../daemon/src/store/postgres-restore.ts';
import { startPostgres } from '../support/postgres.ts';
import { live } from './history.ts';
import { scratchFolder } from './scratch.ts';
import { type Keeper, wholeHome } from './whole-home.ts';

const HISTORIES = 100;
const ON_POSTGRES = 20;

it(`the world holds in ${HISTORIES} histories over the real routes and a store on disk`, async () => {
  for (let seed = 1; seed <= HISTORIES; seed += 1) await live(seed, wholeHome);
}, 300_000);

const postgres = await startPostgres();
if (typeof postgres === 'string') it.skip(`PostgreSQL: ${postgres}`, () => {});
else {
  afterAll(() => postgres.stop());

  /**
   * A restore is the program's own into an empty database, which gives a new name; under the same name the database is
   * set back with its own tools.
   */
  const keeperOf = (first: string): Keeper => {
    const { path: folder, remove } = scratchFolder();
    let address = first;
    let copies = 0;
    return {
      open: () => openPostgresStore({ address, folder, role: 'owner' }),
      async backup(store) {
        copies += 1;
        const file = join(folder, `copy-${copies}.sqlite`);
        await store.backup(file);
        const dump = postgres.dump(address);
        return async (named) => {
          address = named === 'the same' ? await postgres.load(dump) : await postgres.database();
          if (named === 'anew') await fillDatabase(file, address, folder);
        };
      },
      remove,
    };
  };

  it(`the world holds in ${ON_POSTGRES} histories over a store in PostgreSQL`, async () => {
    for (let seed = 1; seed <= ON_POSTGRES; seed += 1) {
      const address = await postgres.database();
      await live(seed, (now) => wholeHome(now, keeperOf(address)));
    }
  }, 300_000);
}
