import { formatDecimal } from '@platewright/core/units/decimal.ts';
import type { DayView } from '@platewright/core/views/types.ts';

interface Row {
  name: string;
  /** As the sums name it when some entries do not report it. */
  key: string;
  eaten: number;
  asked: number | null;
  unit: string;
  decimals: number;
}

/** Sums of the day beside the three macronutrients; a sum that some foods do not report is marked. */
export function DaySums({ day }: { day: DayView }) {
  const { eaten, targets } = day;
  const rows: readonly Row[] = [
    row('Linoleic acid', 'linoleicG', eaten.linoleicG, targets.fat.linoleicG, 'g', 1),
    row(
      'Alpha-linolenic acid',
      'alphaLinolenicG',
      eaten.alphaLinolenicG,
      targets.fat.alphaLinolenicG,
      'g',
      1,
    ),
    row('EPA and DHA', 'epaDhaG', eaten.epaDhaG, targets.fat.epaDhaG, 'g', 2),
    row('Leucine', 'leucineG', eaten.leucineG, null, 'g', 1),
    row('Fibre', 'fibreG', eaten.fibreG, null, 'g', 0),
    row('Sugars', 'sugarsG', eaten.sugarsG, null, 'g', 0),
    row('Sodium', 'sodiumMg', eaten.sodiumMg, null, 'mg', 0),
  ];
  const partly = rows.some(({ key }) => eaten.partly.includes(key));
  return (
    <section>
      <h2>Beside the beams</h2>
      <table class="ledger">
        <thead>
          <tr>
            <th scope="col">Nutrient</th>
            <th scope="col" class="number">
              Eaten
            </th>
            <th scope="col" class="number">
              Asked
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ name, key, eaten: sum, asked, unit, decimals }) => (
            <tr key={key}>
              <th scope="row">{name}</th>
              <td class="number">
                {eaten.partly.includes(key) && <abbr title="at least">≥</abbr>} {formatDecimal(sum, decimals)}{' '}
                {unit}
              </td>
              <td class="number soft">{asked === null ? '' : `${formatDecimal(asked, decimals)} ${unit}`}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {partly && <p class="hint">≥ some foods of this day do not report it, so there is at least so much.</p>}
    </section>
  );
}

function row(
  name: string,
  key: string,
  eaten: number,
  asked: number | null,
  unit: string,
  decimals: number,
): Row {
  return { name, key, eaten, asked, unit, decimals };
}
