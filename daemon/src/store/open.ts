import { openSqliteStore } from './sqlite.ts';
import type { Store } from './store.ts';

/** Where a store is: in a PostgreSQL database when `store` is the address of one, else in a file in the folder `data`. */
export interface StorePlace {
  data: string;
  store: string | null;
}

/** Opens a store for the daemon (`owner`) or for a command beside it (`guest`). Throws StoreTrouble. */
export async function openStore({ data }: StorePlace, role: 'owner' | 'guest'): Promise<Store> {
  return openSqliteStore(data, role);
}
