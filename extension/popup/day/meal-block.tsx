import { Figures } from '@platewright/core/ui/figures.tsx';
import type { EnergyUnit } from '@platewright/core/units/energy.ts';
import type { MealView } from '@platewright/core/views/types.ts';
import type { ComponentChildren } from 'preact';
import { rowKeys } from './row-keys.ts';

interface MealBlockProps {
  meal: MealView;
  energyUnit: EnergyUnit;
  children: ComponentChildren;
}

/** What was eaten at a meal: its sums, and its entries as list items. */
export function MealBlock({ meal, energyUnit, children }: MealBlockProps) {
  return (
    <section class="meal-block" aria-label={`Meal ${meal.meal}`}>
      <h3 class="meal-block-head">
        <span>
          Meal {meal.meal} <span class="soft">{meal.time}</span>
        </span>
        <Figures {...meal.eaten} energyUnit={energyUnit} />
      </h3>
      <ul onKeyDown={rowKeys}>{children}</ul>
    </section>
  );
}
