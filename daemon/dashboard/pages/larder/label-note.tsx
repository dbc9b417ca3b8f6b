import { checkLabel } from '@platewright/core/foods/label-check.ts';
import type { EnergyUnit } from '@platewright/core/units/energy.ts';
import { type FoodDraft, readNutrients, readPer } from './food-draft.ts';

/** Whether the declared energy is what the grams account for, said while the label is typed. */
export function LabelNote({ draft, energyUnit }: { draft: FoodDraft; energyUnit: EnergyUnit }) {
  const per100 = readNutrients(draft, energyUnit);
  if (!per100) return null;
  const per = readPer(draft);
  // The rounding of a label is that of the serving its figures are for.
  const portions = per === undefined ? [] : [{ name: 'label', grams: per }];
  const { verdict, words } = checkLabel({ per100, portions }, energyUnit);
  return (
    <p class={verdict === 'disagrees' ? 'label-note wrong' : 'label-note'} role="status">
      <b>Label check: {verdict}.</b> {words}
    </p>
  );
}
