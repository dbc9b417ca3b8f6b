import { EntryRow } from '@platewright/core/ui/entry-row.tsx';
import { weighedFigure } from '@platewright/core/ui/number.ts';
import type { DayView, EntryView } from '@platewright/core/views/types.ts';
import { useState } from 'preact/hooks';
import { edit, type Fields } from '../../api/edits.ts';
import { Remove } from '../../shell/remove.tsx';
import { useMayWrite } from '../../state/athlete.tsx';
import { useNotice } from '../../state/notice.tsx';
import { MoveEntry } from './move-entry.tsx';

/** An entry that can be weighed anew, moved and removed; each of these can be undone. */
export function DayEntry({ entry, meal, day }: { entry: EntryView; meal: number; day: DayView }) {
  const { act } = useNotice();
  const mayWrite = useMayWrite();
  const [moving, setMoving] = useState(false);
  const { athlete } = day;
  const change = (fields: Fields<'entry'>, before: typeof fields, done: string) =>
    act([edit('entry', athlete, entry.id, fields)], done, [edit('entry', athlete, entry.id, before)]);
  if (!mayWrite) return <EntryRow entry={entry} energyUnit={day.units.energy} />;

  return (
    <>
      <EntryRow
        entry={entry}
        energyUnit={day.units.energy}
        onGrams={(grams) =>
          void change(
            { grams, amount: null },
            { grams: entry.grams, amount: entry.amount },
            `${entry.name}: ${weighedFigure(grams)} g.`,
          )
        }
      >
        <button
          type="button"
          class="link small"
          aria-expanded={moving}
          aria-label={`Move ${entry.name}`}
          onClick={() => setMoving(!moving)}
        >
          Move
        </button>
        <Remove kind="entry" id={entry.id} what={entry.name} />
      </EntryRow>
      {moving && (
        <li class="entry-move">
          <MoveEntry
            name={entry.name}
            date={day.date}
            meal={meal}
            meals={day.meals.length}
            move={(date, to) => {
              setMoving(false);
              void change({ date, meal: to }, { date: day.date, meal }, `Moved ${entry.name} to meal ${to}.`);
            }}
            cancel={() => setMoving(false)}
          />
        </li>
      )}
    </>
  );
}
