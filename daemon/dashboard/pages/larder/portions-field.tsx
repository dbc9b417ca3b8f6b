import { mostPortions } from '@platewright/core/records/limits.ts';
import { RowAction } from '../../shell/row-action.tsx';
import type { FoodDraft } from './food-draft.ts';

interface PortionsFieldProps {
  portions: FoodDraft['portions'];
  onPortions: (portions: FoodDraft['portions']) => void;
}

/** Household measures of a food and their grams. */
export function PortionsField({ portions, onPortions }: PortionsFieldProps) {
  const change = (at: number, part: Partial<FoodDraft['portions'][number]>) =>
    onPortions(portions.map((portion, index) => (index === at ? { ...portion, ...part } : portion)));
  return (
    <fieldset class="field">
      <legend>Portions</legend>
      {portions.map((portion, index) => (
        <div key={index} class="portion">
          <span>1</span>
          <input
            class="input"
            aria-label={`Name of portion ${index + 1}`}
            placeholder="scoop"
            value={portion.name}
            onInput={(event) => change(index, { name: event.currentTarget.value })}
          />
          <span>=</span>
          <input
            class="input grams"
            aria-label={`Grams of portion ${index + 1}`}
            inputMode="decimal"
            value={portion.grams}
            onInput={(event) => change(index, { grams: event.currentTarget.value })}
          />
          <span>g</span>
          <RowAction
            name="Take away"
            what={`portion ${index + 1}`}
            run={() => onPortions(portions.filter((_, at) => at !== index))}
          />
        </div>
      ))}
      <div>
        <button
          type="button"
          class="button small"
          disabled={portions.length >= mostPortions}
          onClick={() => onPortions([...portions, { name: '', grams: '' }])}
        >
          Add a portion
        </button>
      </div>
    </fieldset>
  );
}
