import type { Kind } from '@platewright/core/records/kinds.ts';
import { removal } from '../api/edits.ts';
import { useAthlete } from '../state/athlete.tsx';
import { useNotice } from '../state/notice.tsx';
import { RowAction } from './row-action.tsx';

export interface RemoveProps {
  kind: Kind;
  id: string;
  /** The record in words: `the weigh-in of 3 Mar`. */
  what: string;
}

/** Takes away a record of the athlete in sight, with a way back. */
export function Remove({ kind, id, what }: RemoveProps) {
  const { athlete } = useAthlete();
  const { act } = useNotice();
  const put = (removed: boolean) => [removal(kind, athlete, id, removed)];
  return (
    <RowAction name="Remove" what={what} run={() => void act(put(true), `Removed ${what}.`, put(false))} />
  );
}
