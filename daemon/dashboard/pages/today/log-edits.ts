import { entriesOf } from '@platewright/core/foods/entries-of.ts';
import type { LoggedItem } from '@platewright/core/foods/typed-line/format.ts';
import type { Edit } from '@platewright/core/protocol/records.ts';
import type { Food } from '@platewright/core/records/kinds.ts';
import type { DayView } from '@platewright/core/views/types.ts';
import { edit, removal } from '../../api/edits.ts';
import type { Submit } from '../../state/use-submit.ts';

/** The edits that log foods at a meal of a day now, and those that take them back. */
export function logEdits(
  items: readonly LoggedItem<Food>[],
  { athlete, date }: Pick<DayView, 'athlete' | 'date'>,
  meal: number,
  withIds: Submit['withIds'],
): { edits: Edit[]; back: Edit[] } {
  const entries = withIds(entriesOf(items, { date, meal, at: Date.now() }));
  return {
    edits: entries.map(({ id, fields }) => edit('entry', athlete, id, fields)),
    back: entries.map(({ id }) => removal('entry', athlete, id, true)),
  };
}
