import { proteinRates } from '@platewright/core/targets/protein.ts';
import { Field } from '../forms/field.tsx';
import { plain } from './draft.ts';
import { type AthletePartProps, tied } from './part.ts';

const quick = [
  { rate: proteinRates.practice, label: '1.5 g/lb, practice' },
  { rate: proteinRates.evidenceHigh, label: '2.2, evidence high' },
  { rate: proteinRates.evidenceLow, label: '1.6, evidence low' },
];

/** Rates from which protein quota and fat follow; the practice and the range of the evidence are one press away. */
export function RateFields(part: AthletePartProps) {
  const { draft, set } = part;
  return (
    <div class="fields">
      <div class="field wide">
        <div class="rate">
          <Field label="Protein a day" {...tied(part, 'proteinGPerKg')} unit="g/kg" inputMode="decimal" />
          <Field label="Fat a day" {...tied(part, 'fatGPerKg')} unit="g/kg" inputMode="decimal" />
        </div>
        <div class="buttons">
          {quick.map(({ rate, label }) => (
            <button
              key={label}
              type="button"
              class="button small"
              aria-pressed={draft.proteinGPerKg === plain(rate, 2)}
              onClick={() => set({ proteinGPerKg: plain(rate, 2) })}
            >
              {label}
            </button>
          ))}
        </div>
      </div>
    </div>
  );
}
