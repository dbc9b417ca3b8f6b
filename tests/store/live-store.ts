import { join } from 'node:path';
import { openSqliteStore } from '../../daemon/src/store/sqlite.ts';
import type { Store } from '../../daemon/src/store/store.ts';
import { weighIn } from './contract.ts';

export const DAY = 86_400_000;
export const START = Date.parse('2026-01-01T12:00:00Z');

/** A store of two weigh-ins in the folder `live` of a folder. */
export async function openLiveStore(folder: string): Promise<Store> {
  const store = openSqliteStore(join(folder, 'live'), 'owner');
  await store.append([weighIn('c1', { kg: 80 }), weighIn('c2', { kg: 81 })], (clock) => clock);
  return store;
}
