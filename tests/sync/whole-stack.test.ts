import { afterAll, it } from 'vitest';
import { openPostgresStore } from '../../daemon/src/store/postgres.ts';
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

  /** Its backups are made and restored with its own tools, so here the store is only closed and opened again. */
  const keeperOf = (address: string): Keeper => {
    const { path: folder, remove } = scratchFolder();
    return {
      open: () => openPostgresStore({ address, folder, role: 'owner' }),
      backup: async () => async () => {},
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
