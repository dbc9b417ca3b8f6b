import { EntryRow } from '@platewright/core/ui/entry-row.tsx';
import { weighedFigure } from '@platewright/core/ui/number.ts';
import type { DayView, EntryView } from '@platewright/core/views/types.ts';
import { useRef, useState } from 'preact/hooks';
import type { Actions } from '../state/use-actions.ts';
import { entryEdit } from './entry-edits.ts';
import { MoveStrip } from './move-strip.tsx';
import { leaveRow } from './row-keys.ts';

interface PopupEntryProps {
  entry: EntryView;
  meal: number;
  day: DayView;
  actions: Actions;
}

/** An entry that can be weighed anew, moved and removed; by keys as well, see `rowKeys`. */
export function PopupEntry({ entry, meal, day, actions }: PopupEntryProps) {
  const [moving, setMoving] = useState(false);
  const moveButton = useRef<HTMLButtonElement>(null);
  const change = (fields: Parameters<typeof entryEdit>[2], done: string) =>
    void actions.act([entryEdit(day.athlete, entry.id, fields)], done);

  return (
    <>
      <EntryRow
        entry={entry}
        energyUnit={day.units.energy}
        onGrams={(grams) => change({ grams, amount: null }, `${entry.name}: ${weighedFigure(grams)} g.`)}
      >
        <button
          ref={moveButton}
          type="button"
          class="link small"
          data-key="m"
          aria-expanded={moving}
          aria-label={`Move ${entry.name}`}
          onClick={() => setMoving(!moving)}
        >
          Move
        </button>
        <button
          type="button"
          class="link small"
          data-key="Delete"
          aria-label={`Remove ${entry.name}`}
          onClick={(event) => {
            leaveRow(event.currentTarget);
            change({ removed: true }, `Removed ${entry.name}.`);
          }}
        >
          Remove
        </button>
      </EntryRow>
      {moving && (
        <li class="entry-move">
          <MoveStrip
            name={entry.name}
            date={day.date}
            meal={meal}
            meals={day.meals.length}
            move={(to, done) => {
              setMoving(false);
              leaveRow(moveButton.current);
              change(to, done);
            }}
            close={() => {
              setMoving(false);
              moveButton.current?.focus();
            }}
          />
        </li>
      )}
    </>
  );
}
