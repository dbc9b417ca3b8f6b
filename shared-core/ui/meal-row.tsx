import type { ComponentChildren } from 'preact';
import type { EnergyUnit } from '../src/units/energy.ts';
import type { MealView } from '../src/views/types.ts';
import { Figures } from './figures.tsx';

interface MealRowProps {
  meal: MealView;
  /** The meal to log next: it carries the pointer. */
  next: boolean;
  energyUnit: EnergyUnit;
  /** Entries as list items. */
  children: ComponentChildren;
}

/** One meal on the day's time line: its time, number and role, its entries, and what is left for it. A list item. */
export function MealRow({ meal, next, energyUnit, children }: MealRowProps) {
  const eaten = meal.entries.length > 0;
  const state = next ? 'meal next' : eaten ? 'meal eaten' : 'meal';
  return (
    <li class={state}>
      <div class="meal-head">
        <h3 class="entry-name">
          <span class="meal-time">{meal.time}</span> Meal {meal.meal}
          {next && <span class="meal-next"> next</span>}
          {meal.role !== 'meal' && <span class="meal-role"> {meal.role}</span>}
        </h3>
        {eaten && <Figures {...meal.eaten} energyUnit={energyUnit} />}
      </div>
      {eaten && <ul class="meal-entries">{children}</ul>}
      {somethingLeft(meal) && <MealLeft meal={meal} energyUnit={energyUnit} />}
    </li>
  );
}

/** Under half a gram shows as nothing. */
function somethingLeft({ left }: MealView): boolean {
  return Math.max(left.proteinG, left.carbohydrateG, left.fatG) >= 0.5;
}

/** What is left for a meal, in the same columns as its entries. */
function MealLeft({ meal, energyUnit }: { meal: MealView; energyUnit: EnergyUnit }) {
  return (
    <p class="meal-left">
      <span class="entry-name">{meal.entries.length > 0 ? 'Still left for it' : 'Left for it'}</span>
      <Figures {...meal.left} energyUnit={energyUnit} />
    </p>
  );
}
