import type { CaliperMethod } from '@platewright/core/records/body.ts';
import { formatDay, formatDayOfYear } from '@platewright/core/ui/format-date.ts';
import { formatDecimal } from '@platewright/core/units/decimal.ts';
import type { BodyView } from '@platewright/core/views/body-types.ts';
import { Ledger } from '../../shell/ledger.tsx';

const shortMethods: Record<CaliperMethod, string> = {
  'jackson-pollock 3': '3 folds',
  'jackson-pollock 7': '7 folds',
  'durnin-womersley': '4 folds',
};

/** The skinfolds, newest first, with the body fat that each set tells. */
export function CalipersTable({ body }: { body: BodyView }) {
  if (body.calipers.length === 0) {
    return (
      <p class="soft">
        Folds tell body fat nearer the skin than the tape does. Take each one twice and type the mean; the
        same hand and the same calipers each time matter more than the method.
      </p>
    );
  }
  return (
    <Ledger
      caption="Calipers, newest first"
      rows={body.calipers}
      keyOf={({ id }) => id}
      most={6}
      columns={[
        {
          head: 'Date',
          cell: ({ date, method }) => (
            <>
              <span class="nowrap">{formatDayOfYear(date)}</span>{' '}
              <span class="soft small nowrap">{shortMethods[method]}</span>
            </>
          ),
        },
        {
          head: 'Sum',
          class: 'number',
          cell: ({ sumMm }) => (sumMm === null ? 'a fold is missing' : `${formatDecimal(sumMm, 1)} mm`),
        },
        {
          head: 'Body fat',
          class: 'number',
          cell: ({ fat }) =>
            fat && (
              <>
                {formatDecimal(fat.percent, 1)} %
                <span class="soft small"> ± {formatDecimal(fat.errorPercent, 1)}</span>
              </>
            ),
        },
      ]}
      remove={({ id, date }) => ({ kind: 'calipers', id, what: `the folds of ${formatDay(date)}` })}
    />
  );
}
