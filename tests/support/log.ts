import type { Change } from '@platewright/core/changes/change.ts';
import type { Store } from '../../daemon/src/store/store.ts';

/** All changes of a store whose log is not folded. */
export async function logOf(store: Store): Promise<Change[]> {
  const page = await store.changesSince(0, 1_000_000);
  if (page === 'folded') throw new Error('the log is folded');
  return page.changes;
}
