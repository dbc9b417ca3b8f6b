import { openSqliteStore } from './sqlite.ts';
import type { Store } from './store.ts';

/** Where a store is: in a PostgreSQL database when `store` is the address of one, else in a file in the folder `data`. */
export interface StorePlace {
  data: string;
  store: string | null;
}

/** Opens a store for the daemon (`owner`) or for a command beside it (`guest`). Throws StoreTrouble. */
export async function openStore({ data, store }: StorePlace, role: 'owner' | 'guest'): Promise<Store> {
  if (store === null) return openSqliteStore(data, role);
  // Loaded only when it is used, so that a start with a file is quick.
  const { openPostgresStore } = await import('./postgres.ts');
  return await openPostgresStore({ address: store, folder: data, role });
}
