import type { Estimate } from '@platewright/core/trend/estimate.ts';
import { formatDecimal, formatSigned } from '@platewright/core/units/decimal.ts';
import { bodyMassIn } from '@platewright/core/units/mass.ts';
import type { BodyView, LeanShareView } from '@platewright/core/views/body-types.ts';
import { Ledger } from '../../shell/ledger.tsx';
import { range } from '../../shell/range.ts';

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
      <Ledger
        caption="Lean share of the change"
        rows={leanShares}
        keyOf={({ weeks }) => weeks}
        columns={[
          { head: 'Change of the last', cell: ({ weeks }) => `${weeks} weeks` },
          {
            head: 'Lean share',
            class: 'number',
            cell: ({ share }) =>
              share ? <Part of={share} unit=" %" figure={percent} /> : <span class="soft">not known</span>,
          },
          {
            head: `Lean, ${units.mass}`,
            class: 'number',
            cell: ({ leanKg }) => <Part of={leanKg} figure={mass} />,
          },
          {
            head: `Fat, ${units.mass}`,
            class: 'number',
            cell: ({ fatKg }) => <Part of={fatKg} figure={mass} />,
          },
        ]}
      />
      <p class="soft small">{words(leanShares)}</p>
    </div>
  );
}

function percent(share: number): string {
  return formatDecimal(100 * share);
}

function Part({ of, unit = '', figure }: { of: Estimate; unit?: string; figure: (value: number) => string }) {
  return (
    <>
      {figure(of.mean)}
      {unit}
      <span class="soft small block">{range(of.interval90, figure)}</span>
    </>
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
