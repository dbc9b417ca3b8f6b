import { formatWeekday } from '@platewright/core/ui/format-date.ts';
import { massFigure } from '@platewright/core/ui/number.ts';
import { formatBodyMass } from '@platewright/core/units/mass.ts';
import type { BodyPoint, BodyView } from '@platewright/core/views/body-types.ts';
import { Ledger } from '../../shell/ledger.tsx';
import { range } from '../../shell/range.ts';

const counted: Record<BodyPoint['used'], string> = {
  none: '',
  used: 'in full',
  part: 'in part',
  odd: 'set aside as odd',
};

/** The weigh-ins, newest first, with the line of their date and how each one counted. */
export function WeighInTable({ body }: { body: BodyView }) {
  const { mass: unit } = body.units;
  const mass = (kg: number) => massFigure(kg, unit);
  const rows = body.points
    .toReversed()
    .flatMap((point) => point.weighIns.map((weighIn) => ({ ...point, weighIn })));
  return (
    <Ledger
      caption="Weigh-ins, newest first"
      rows={rows}
      keyOf={({ weighIn }) => weighIn.id}
      most={10}
      columns={[
        {
          head: 'Date',
          cell: ({ date, weighIn }) => (
            <>
              {formatWeekday(date, body.date)}
              {weighIn.note && <span class="soft small block">{weighIn.note}</span>}
            </>
          ),
        },
        { head: 'Scale', class: 'number', cell: ({ weighIn }) => formatBodyMass(weighIn.kg, unit) },
        { head: 'Line', class: 'number', cell: ({ lineKg }) => mass(lineKg.mean) },
        {
          head: '90 % interval',
          class: 'number soft wide-only',
          cell: ({ lineKg }) => range(lineKg.interval90, mass),
        },
        { head: 'Counted', class: 'soft wide-only', cell: ({ used }) => counted[used] },
      ]}
      remove={({ date, weighIn }) => ({
        kind: 'weigh-in',
        id: weighIn.id,
        what: `the weigh-in of ${formatWeekday(date, body.date)}`,
      })}
    />
  );
}
