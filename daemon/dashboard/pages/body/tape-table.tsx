import { formatDay } from '@platewright/core/ui/format-date.ts';
import { formatSigned } from '@platewright/core/units/decimal.ts';
import { cmPerInch, formatTape, lengthUnit } from '@platewright/core/units/length.ts';
import type { BodyView } from '@platewright/core/views/body-types.ts';
import { Ledger } from '../../shell/ledger.tsx';

/** The newest reading of each site, and how far it is from the one before. */
export function TapeTable({ body }: { body: BodyView }) {
  const unit = lengthUnit(body.units.mass);
  if (body.tape.length === 0) {
    return (
      <p class="soft">
        The waist tells fat from muscle when body mass changes: with a reading a week the weekly call can use
        it. Neck and, for women, hip give an estimate of body fat.
      </p>
    );
  }
  const rows = body.tape.flatMap(({ site, readings }) => {
    const [before, newest] = [readings.at(-2), readings.at(-1)];
    const change = before && newest && (newest.cm - before.cm) / (unit === 'cm' ? 1 : cmPerInch);
    return newest ? [{ ...newest, site, change }] : [];
  });
  return (
    <Ledger
      caption="Newest tape of each site"
      rows={rows}
      keyOf={({ site }) => site}
      columns={[
        {
          head: 'Site',
          cell: ({ site, date }) => (
            <>
              {site} <span class="soft small nowrap">{formatDay(date)}</span>
            </>
          ),
        },
        { head: 'Newest', class: 'number', cell: ({ cm }) => formatTape(cm, unit) },
        {
          head: 'Change',
          class: 'number soft',
          cell: ({ change }) => (change === undefined ? '' : formatSigned(change, 1)),
        },
      ]}
      remove={({ id, site }) => ({ kind: 'tape', id, what: `the newest ${site}` })}
    />
  );
}
