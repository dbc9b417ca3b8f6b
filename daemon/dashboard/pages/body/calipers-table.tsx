import type { CaliperMethod } from '@platewright/core/records/body.ts';
import { formatDay, formatDayOfYear } from '@platewright/core/ui/format-date.ts';
import { formatDecimal } from '@platewright/core/units/decimal.ts';
import type { BodyView } from '@platewright/core/views/body-types.ts';
import { useState } from 'preact/hooks';
import { removal } from '../../api/edits.ts';
import { useNotice } from '../../state/notice.tsx';

const firstRows = 6;

const shortMethods: Record<CaliperMethod, string> = {
  'jackson-pollock 3': '3 folds',
  'jackson-pollock 7': '7 folds',
  'durnin-womersley': '4 folds',
};

/** The skinfolds, newest first, with the body fat that each set tells. */
export function CalipersTable({ body }: { body: BodyView }) {
  const [all, setAll] = useState(false);
  const { act } = useNotice();
  const { athlete, calipers } = body;
  if (calipers.length === 0) {
    return (
      <p class="soft">
        Folds tell body fat nearer the skin than the tape does. Take each one twice and type the mean; the
        same hand and the same calipers each time matter more than the method.
      </p>
    );
  }
  return (
    <>
      <table class="ledger">
        <caption class="unseen">Calipers, newest first</caption>
        <thead>
          <tr>
            <th scope="col">Date</th>
            <th scope="col" class="number">
              Sum
            </th>
            <th scope="col" class="number">
              Body fat
            </th>
            <th scope="col">
              <span class="unseen">Actions</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {(all ? calipers : calipers.slice(0, firstRows)).map(({ id, date, method, sumMm, fat }) => (
            <tr key={id}>
              <th scope="row">
                {formatDayOfYear(date)} <span class="soft small nowrap">{shortMethods[method]}</span>
              </th>
              <td class="number">{sumMm === null ? 'a fold is missing' : `${formatDecimal(sumMm, 1)} mm`}</td>
              <td class="number">
                {fat && (
                  <>
                    {formatDecimal(fat.percent, 1)} %
                    <span class="soft small"> ± {formatDecimal(fat.errorPercent, 1)}</span>
                  </>
                )}
              </td>
              <td class="number">
                <button
                  type="button"
                  class="link small"
                  onClick={() =>
                    void act(
                      [removal('calipers', athlete, id, true)],
                      `Removed the folds of ${formatDay(date)}.`,
                      [removal('calipers', athlete, id, false)],
                    )
                  }
                >
                  Remove<span class="unseen"> the folds of {formatDay(date)}</span>
                </button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {calipers.length > firstRows && (
        <button type="button" class="button small" onClick={() => setAll(!all)}>
          {all ? 'Show fewer' : `Show all ${calipers.length}`}
        </button>
      )}
    </>
  );
}
