import type { Change } from '@platewright/core/changes/change.ts';
import { whyRefused } from '@platewright/core/changes/check.ts';
import type { StoredRecord } from '@platewright/core/changes/merge.ts';
import { takesAll } from './takes-all.ts';

/** Why a change can't be stored on top of the record it names, or null when it can. */
export function whyImpossible(change: Change, before: StoredRecord | null): string | null {
  if (change.kind === 'athlete' && change.record !== change.athlete) {
    return 'The record of an athlete has the athlete’s own id.';
  }
  if (before !== null && before.kind !== change.kind) {
    return `The record ${change.record} is of kind “${before.kind}”, not “${change.kind}”.`;
  }
  return takesAll(change) ? null : whyRefused(change);
}
