import { formatDay } from '@platewright/core/ui/format-date.ts';
import { formatSigned } from '@platewright/core/units/decimal.ts';
import { cmPerInch, formatTape, lengthUnit } from '@platewright/core/units/length.ts';
import type { BodyView } from '@platewright/core/views/body-types.ts';
import { removal } from '../../api/edits.ts';
import { useNotice } from '../../state/notice.tsx';

/** The newest reading of each site, and how far it is from the one before. */
export function TapeTable({ body }: { body: BodyView }) {
  const { act } = useNotice();
  const unit = lengthUnit(body.units.mass);
  if (body.tape.length === 0) {
    return (
      <p class="soft">
        The waist tells fat from muscle when body mass changes: with a reading a week the weekly call can use
        it. Neck and, for women, hip give an estimate of body fat.
      </p>
    );
  }
  return (
    <table class="ledger">
      <caption class="unseen">Newest tape of each site</caption>
      <thead>
        <tr>
          <th scope="col">Site</th>
          <th scope="col" class="number">
            Newest
          </th>
          <th scope="col" class="number">
            Change
          </th>
          <th scope="col">
            <span class="unseen">Actions</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {body.tape.map(({ site, readings }) => {
          const [before, newest] = [readings.at(-2), readings.at(-1)];
          if (!newest) return null;
          const change = before && (unit === 'cm' ? 1 : 1 / cmPerInch) * (newest.cm - before.cm);
          return (
            <tr key={site}>
              <th scope="row">
                {site} <span class="soft small nowrap">{formatDay(newest.date)}</span>
              </th>
              <td class="number">{formatTape(newest.cm, unit)}</td>
              <td class="number soft">{change === undefined ? '' : formatSigned(change, 1)}</td>
              <td class="number">
                <button
                  type="button"
                  class="link small"
                  onClick={() =>
                    void act(
                      [removal('tape', body.athlete, newest.id, true)],
                      `Removed the tape of ${site}.`,
                      [removal('tape', body.athlete, newest.id, false)],
                    )
                  }
                >
                  Remove<span class="unseen"> the newest {site}</span>
                </button>
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
