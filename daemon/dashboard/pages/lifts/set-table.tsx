import { formatDayOfYear, formatWeekday } from '@platewright/core/ui/format-date.ts';
import type { LiftsView, LiftView } from '@platewright/core/views/lifts-types.ts';
import { useState } from 'preact/hooks';
import { removal } from '../../api/edits.ts';
import { useNotice } from '../../state/notice.tsx';
import { formatSet } from './load.ts';

const firstRows = 10;

/** The sets of a lift, newest first. */
export function SetTable({ lift, view }: { lift: LiftView; view: LiftsView }) {
  const [all, setAll] = useState(false);
  const { act } = useNotice();
  const { athlete, units } = view;
  const { sets, name } = lift;
  return (
    <>
      <table class="ledger">
        <caption class="unseen">Sets of {name}, newest first</caption>
        <thead>
          <tr>
            <th scope="col">Date</th>
            <th scope="col" class="number">
              Set
            </th>
            <th scope="col">
              <span class="unseen">Actions</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {(all ? sets : sets.slice(0, firstRows)).map((set) => (
            <tr key={set.id}>
              <th scope="row">{formatDayOfYear(set.date)}</th>
              <td class="number">{formatSet(set, units.mass)}</td>
              <td class="number">
                <button
                  type="button"
                  class="link small"
                  onClick={() =>
                    void act(
                      [removal('lift-set', athlete, set.id, true)],
                      `Removed ${name}, ${formatSet(set, units.mass)}.`,
                      [removal('lift-set', athlete, set.id, false)],
                    )
                  }
                >
                  Remove
                  <span class="unseen">
                    {' '}
                    {name} {formatSet(set, units.mass)} of {formatWeekday(set.date)}
                  </span>
                </button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {sets.length > firstRows && (
        <button type="button" class="button small" onClick={() => setAll(!all)}>
          {all ? 'Show fewer' : `Show all ${sets.length}`}
        </button>
      )}
    </>
  );
}
