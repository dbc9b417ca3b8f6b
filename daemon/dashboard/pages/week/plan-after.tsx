import { gramsFigure } from '@platewright/core/ui/number.ts';
import { formatEnergy } from '@platewright/core/units/energy.ts';
import { formatBodyMass, formatGrams } from '@platewright/core/units/mass.ts';
import type { Units } from '@platewright/core/units/reader.ts';
import type { WeekView } from '@platewright/core/views/week-types.ts';

/** The whole plan that accepting leads to: the body mass of the line comes in force, and protein and fat follow it. */
export function PlanAfter({ plan, units }: { plan: NonNullable<WeekView['planAfter']>; units: Units }) {
  const { bodyMassKg, proteinG, carbohydrateG, fatG, fatFloorG, energyKcal } = plan;
  return (
    <p class="soft small">
      A day then has {gramsFigure(proteinG)} g protein, {gramsFigure(carbohydrateG)} g carbohydrate and{' '}
      {gramsFigure(fatG)} g fat, {formatEnergy(energyKcal, units.energy)}, at{' '}
      {formatBodyMass(bodyMassKg, units.mass)} on the bodyweight line.
      {fatG < fatFloorG && ` Fat then lies under its floor of ${formatGrams(fatFloorG)}.`}
    </p>
  );
}
