import { proteinRates } from '@platewright/core/targets/protein.ts';
import { formatDecimal, parseDecimalIn } from '@platewright/core/units/decimal.ts';
import { type BodyMassUnit, kgFromPounds } from '@platewright/core/units/mass.ts';
import { Field } from '../forms/field.tsx';
import { plain } from './draft.ts';
import { type AthletePartProps, tied } from './part.ts';

const quick = [
  { rate: proteinRates.practice, name: 'practice' },
  { rate: proteinRates.evidenceHigh, name: 'evidence high' },
  { rate: proteinRates.evidenceLow, name: 'evidence low' },
];

/** Rates from which protein quota and fat follow; the practice and the range of the evidence are one press away. */
export function RateFields(part: AthletePartProps) {
  const { draft, set } = part;
  return (
    <div class="fields">
      <div class="field wide">
        <div class="rate">
          <Field
            label="Protein a day"
            {...tied(part, 'proteinGPerKg')}
            unit="g/kg"
            hint={inPounds(draft.proteinGPerKg, draft.massUnit)}
            inputMode="decimal"
          />
          <Field
            label="Fat a day"
            {...tied(part, 'fatGPerKg')}
            unit="g/kg"
            hint={inPounds(draft.fatGPerKg, draft.massUnit)}
            inputMode="decimal"
          />
        </div>
        <div class="buttons">
          {quick.map(({ rate, name }) => (
            <button
              key={name}
              type="button"
              class="button small"
              aria-pressed={draft.proteinGPerKg === plain(rate, 2)}
              onClick={() => set({ proteinGPerKg: plain(rate, 2) })}
            >
              {rateWords(rate, draft.massUnit)}, {name}
            </button>
          ))}
        </div>
      </div>
    </div>
  );
}

/** A typed rate by the pound, for who reads pounds; nothing while it can't be read. */
function inPounds(typed: string, unit: BodyMassUnit): string | undefined {
  const gPerKg = parseDecimalIn(typed, 'g/kg');
  return unit === 'lb' && gPerKg !== undefined ? rateWords(gPerKg, unit) : undefined;
}

function rateWords(gPerKg: number, unit: BodyMassUnit): string {
  return `${formatDecimal(gPerKg * (unit === 'lb' ? kgFromPounds(1) : 1), 2)} g/${unit}`;
}
