import { EntryRow } from '@platewright/core/ui/entry-row.tsx';
import type { DayView } from '@platewright/core/views/types.ts';
import type { Actions } from '../state/use-actions.ts';
import { MealBlock } from './meal-block.tsx';
import { PopupEntry } from './popup-entry.tsx';

interface EatenProps {
  day: DayView;
  /** The meal that is logged to; it comes first. Null where nothing is. */
  meal: number | null;
  /** What can be done with an entry; null where it may only be looked at. */
  actions: Actions | null;
}

/** What was eaten on the date, meal by meal: the meal at hand, then the others with the latest first. */
export function Eaten({ day, meal, actions }: EatenProps) {
  const eaten = day.meals.filter(({ entries }) => entries.length > 0);
  const first = eaten.filter((view) => view.meal === meal);
  const others = eaten.filter((view) => view.meal !== meal).toReversed();
  return (
    <>
      {[...first, ...others].map((view) => (
        <MealBlock key={view.meal} meal={view} energyUnit={day.units.energy}>
          {view.entries.map((entry) =>
            actions === null ? (
              <EntryRow key={entry.id} entry={entry} energyUnit={day.units.energy} />
            ) : (
              <PopupEntry key={entry.id} entry={entry} meal={view.meal} day={day} actions={actions} />
            ),
          )}
        </MealBlock>
      ))}
    </>
  );
}
