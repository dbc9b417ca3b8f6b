import type { Estimate } from '@platewright/core/trend/estimate.ts';
import { formatDecimal, formatSigned } from '@platewright/core/units/decimal.ts';
import { bodyMassIn } from '@platewright/core/units/mass.ts';
import type { BodyView, LeanShareView } from '@platewright/core/views/body-types.ts';

/** How the change of the last weeks splits into lean and fat, each part with its interval. */
export function LeanShareTable({ body }: { body: BodyView }) {
  const { leanShares, units } = body;
  const mass = (kg: number) => formatSigned(bodyMassIn(kg, units.mass), 1);
  if (leanShares.length === 0) {
    return (
      <p class="soft">
        After four weeks of weigh-ins this says how much of the change was lean. Energy from the log and a
        waist once a week narrow it.
      </p>
    );
  }
  return (
    <div class="stack">
      <table class="ledger">
        <caption class="unseen">Lean share of the change</caption>
        <thead>
          <tr>
            <th scope="col">Change of the last</th>
            <th scope="col" class="number">
              Lean share
            </th>
            <th scope="col" class="number">
              Lean, {units.mass}
            </th>
            <th scope="col" class="number">
              Fat, {units.mass}
            </th>
          </tr>
        </thead>
        <tbody>
          {leanShares.map(({ weeks, share, leanKg, fatKg }) => (
            <tr key={weeks}>
              <th scope="row">{weeks} weeks</th>
              {share === null ? (
                <td class="number soft">not known</td>
              ) : (
                <Cell of={share} unit=" %" figure={(part) => formatDecimal(100 * part)} />
              )}
              <Cell of={leanKg} figure={mass} />
              <Cell of={fatKg} figure={mass} />
            </tr>
          ))}
        </tbody>
      </table>
      <p class="soft small">{words(leanShares)}</p>
    </div>
  );
}

function Cell({ of, unit = '', figure }: { of: Estimate; unit?: string; figure: (value: number) => string }) {
  const { low, high } = of.interval90;
  return (
    <td class="number">
      {figure(of.mean)}
      {unit}
      <span class="soft small block">
        {figure(low)} to {figure(high)}
      </span>
    </td>
  );
}

/** What the figures rest on, and why one may be missing. */
function words(shares: readonly LeanShareView[]): string {
  const used = new Set(shares.flatMap(({ from }) => from));
  const sources = [
    'the bodyweight line, water left out',
    used.has('tape') && 'the waist',
    used.has('energy') && 'energy eaten less used',
  ].filter(Boolean);
  const unknown = shares.some(({ share }) => share === null);
  return [
    `Under each figure its 90 % interval, from ${sources.join('; ')}.`,
    unknown && 'A share is not known while the change can’t be told from none.',
  ]
    .filter(Boolean)
    .join(' ');
}
