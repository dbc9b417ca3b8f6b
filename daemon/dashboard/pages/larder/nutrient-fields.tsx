import { twoWaysWords } from '@platewright/core/units/decimal.ts';
import type { EnergyUnit } from '@platewright/core/units/energy.ts';
import { Field } from '../../forms/field.tsx';
import { type FoodDraft, nutrientNames, readFigure, readPer } from './food-draft.ts';

interface NutrientFieldsProps {
  draft: FoodDraft;
  set: (change: Partial<FoodDraft>) => void;
  energyUnit: EnergyUnit;
  tried: boolean;
}

/** The figures of a label, for as many grams as the label gives them for. */
export function NutrientFields({ draft, set, energyUnit, tried }: NutrientFieldsProps) {
  const wrongFigure = (key: (typeof nutrientNames)[number]['key'], needed: boolean) => {
    const text = draft.nutrients[key].trim();
    if (text === '') return tried && needed ? 'Type what the label says; 0 for none.' : undefined;
    const value = readFigure(draft, key, energyUnit);
    if (value === undefined) return twoWaysWords(text) ?? 'Type a number, 0 or more.';
    return Number.isNaN(value) ? 'No food holds as much: check it, and what the figures are for.' : undefined;
  };
  const field = ({ key, label, unit, needed }: (typeof nutrientNames)[number]) => (
    <Field
      key={key}
      label={label}
      value={draft.nutrients[key]}
      onText={(text) => set({ nutrients: { ...draft.nutrients, [key]: text } })}
      unit={key === 'energyKcal' ? energyUnit : unit}
      inputMode="decimal"
      wrong={wrongFigure(key, needed)}
    />
  );
  return (
    <>
      <div class="fields narrow">
        <Field
          label="Figures are for"
          value={draft.per}
          onText={(per) => set({ per })}
          unit="g"
          inputMode="decimal"
          wrong={readPer(draft) ? undefined : (twoWaysWords(draft.per) ?? 'Type grams above 0, mostly 100.')}
        />
        {nutrientNames.filter(({ needed }) => needed).map(field)}
      </div>
      {/* Grams of 100 ml from the cups of the starter larder. */}
      <p class="hint">
        Carbohydrate here includes fibre, as on labels in the US and Canada. Most others leave it out: add
        their fibre to it. Where the figures are for 100 ml, type the grams that 100 ml weigh: 103 of milk, 91
        of oil, 100 of most drinks.
      </p>
      <details>
        <summary>Fibre, fatty acids, leucine, sodium and more</summary>
        <div class="fields narrow">{nutrientNames.filter(({ needed }) => !needed).map(field)}</div>
        <p class="hint">Leave empty what the label does not say: unknown is not zero.</p>
      </details>
    </>
  );
}
