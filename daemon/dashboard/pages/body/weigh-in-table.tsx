import { formatWeekday } from '@platewright/core/ui/format-date.ts';
import { massFigure } from '@platewright/core/ui/number.ts';
import { formatBodyMass } from '@platewright/core/units/mass.ts';
import type { BodyPoint, BodyView } from '@platewright/core/views/body-types.ts';
import { useState } from 'preact/hooks';
import { removal } from '../../api/edits.ts';
import { useNotice } from '../../state/notice.tsx';

const firstRows = 10;

const counted: Record<BodyPoint['used'], string> = {
  none: '',
  used: 'in full',
  part: 'in part',
  odd: 'set aside as odd',
};

/** The weigh-ins, newest first, with the line of their date and how each one counted. */
export function WeighInTable({ body }: { body: BodyView }) {
  const [all, setAll] = useState(false);
  const { act } = useNotice();
  const { mass } = body.units;
  const rows = body.points
    .filter((point) => point.weighIns.length > 0)
    .toReversed()
    .flatMap((point) => point.weighIns.map((weighIn) => ({ ...point, weighIn })));
  const shown = all ? rows : rows.slice(0, firstRows);
  return (
    <>
      <table class="ledger">
        <caption class="unseen">Weigh-ins, newest first</caption>
        <thead>
          <tr>
            <th scope="col">Date</th>
            <th scope="col" class="number">
              Scale
            </th>
            <th scope="col" class="number">
              Line
            </th>
            <th scope="col" class="wide-only number">
              90 % interval
            </th>
            <th scope="col" class="wide-only">
              Counted
            </th>
            <th scope="col">
              <span class="unseen">Actions</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {shown.map(({ date, weighIn, lineKg, used }) => (
            <tr key={weighIn.id}>
              <th scope="row">
                {formatWeekday(date)}
                {weighIn.note && <span class="soft small block">{weighIn.note}</span>}
              </th>
              <td class="number">{formatBodyMass(weighIn.kg, mass)}</td>
              <td class="number">{massFigure(lineKg.mean, mass)}</td>
              <td class="number soft wide-only">
                {massFigure(lineKg.interval90.low, mass)} to {massFigure(lineKg.interval90.high, mass)}
              </td>
              <td class="soft wide-only">{counted[used]}</td>
              <td class="number">
                <button
                  type="button"
                  class="link small"
                  onClick={() =>
                    void act(
                      [removal('weigh-in', body.athlete, weighIn.id, true)],
                      `Removed the weigh-in of ${formatWeekday(date)}.`,
                      [removal('weigh-in', body.athlete, weighIn.id, false)],
                    )
                  }
                >
                  Remove<span class="unseen"> the weigh-in of {formatWeekday(date)}</span>
                </button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {rows.length > firstRows && (
        <button type="button" class="button small" onClick={() => setAll(!all)}>
          {all ? 'Show fewer' : `Show all ${rows.length}`}
        </button>
      )}
    </>
  );
}
