import type { Change } from '@platewright/core/changes/change.ts';
import type { Rights } from '@platewright/core/protocol/devices.ts';
import { whyNoWrite } from '@platewright/core/protocol/rights.ts';
import type { Outcome } from '@platewright/core/protocol/sync.ts';
import type { Writer } from './writer.ts';

/** Pushes what a device may write and rejects the rest with the reason; an outcome for each change, in their order. */
export async function pushWithRights(
  writer: Writer,
  rights: Rights,
  changes: readonly Change[],
): Promise<Outcome[]> {
  if (changes.every(({ athlete }) => whyNoWrite(rights, athlete) === null)) return await writer.push(changes);
  // Pushes that wait together share one flush, so the allowed ones among the others cost no more.
  const outcomes = changes.map(async (change): Promise<Outcome[]> => {
    const reason = whyNoWrite(rights, change.athlete);
    return reason === null ? await writer.push([change]) : [{ id: change.id, outcome: 'rejected', reason }];
  });
  return (await Promise.all(outcomes)).flat();
}
