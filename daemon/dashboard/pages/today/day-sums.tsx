import { formatDecimal } from '@platewright/core/units/decimal.ts';
import type { DayView } from '@platewright/core/views/types.ts';
import { Ledger } from '../../shell/ledger.tsx';

const nutrients = [
  { key: 'linoleicG', name: 'Linoleic acid', unit: 'g', decimals: 1 },
  { key: 'alphaLinolenicG', name: 'Alpha-linolenic acid', unit: 'g', decimals: 1 },
  { key: 'epaDhaG', name: 'EPA and DHA', unit: 'g', decimals: 2 },
  { key: 'leucineG', name: 'Leucine', unit: 'g', decimals: 1 },
  { key: 'fibreG', name: 'Fibre', unit: 'g', decimals: 0 },
  { key: 'sugarsG', name: 'Sugars', unit: 'g', decimals: 0 },
  { key: 'sodiumMg', name: 'Sodium', unit: 'mg', decimals: 0 },
] as const;

/** Sums of the day beside the three macronutrients; a sum that some foods do not report is marked. */
export function DaySums({ day: { eaten, targets } }: { day: DayView }) {
  const { linoleicG, alphaLinolenicG, epaDhaG } = targets.fat;
  const asked: { [K in (typeof nutrients)[number]['key']]?: number } = {
    linoleicG,
    alphaLinolenicG,
    epaDhaG,
  };
  return (
    <section>
      <h2>Beside the beams</h2>
      <Ledger
        caption="Sums of the day"
        rows={nutrients}
        keyOf={({ key }) => key}
        columns={[
          { head: 'Nutrient', cell: ({ name }) => name },
          {
            head: 'Eaten',
            class: 'number',
            cell: ({ key, unit, decimals }) => (
              <>
                {eaten.partly.includes(key) && <abbr title="at least">≥</abbr>}{' '}
                {formatDecimal(eaten[key], decimals)} {unit}
              </>
            ),
          },
          {
            head: 'Asked',
            class: 'number soft',
            cell: ({ key, unit, decimals }) => {
              const grams = asked[key];
              return grams === undefined ? '' : `${formatDecimal(grams, decimals)} ${unit}`;
            },
          },
        ]}
      />
      {nutrients.some(({ key }) => eaten.partly.includes(key)) && (
        <p class="hint">≥ some foods of this day do not report it, so there is at least so much.</p>
      )}
    </section>
  );
}
