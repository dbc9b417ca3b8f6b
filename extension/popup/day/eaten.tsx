import type { DayView } from '@platewright/core/views/types.ts';
import type { Actions } from '../state/use-actions.ts';
import { MealBlock } from './meal-block.tsx';
import { PopupEntry } from './popup-entry.tsx';

interface EatenProps {
  day: DayView;
  /** The meal that is logged to; it comes first. */
  meal: number;
  actions: Actions;
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
          {view.entries.map((entry) => (
            <PopupEntry key={entry.id} entry={entry} meal={view.meal} day={day} actions={actions} />
          ))}
        </MealBlock>
      ))}
    </>
  );
}
