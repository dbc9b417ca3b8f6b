import { formatDayOfYear, formatWeekday } from '@platewright/core/ui/format-date.ts';
import type { LiftsView, LiftView } from '@platewright/core/views/lifts-types.ts';
import { Ledger } from '../../shell/ledger.tsx';
import { formatSet } from './load.ts';

/** The sets of a lift, newest first. */
export function SetTable({ lift: { name, sets }, view }: { lift: LiftView; view: LiftsView }) {
  const words = (set: LiftView['sets'][number]) => formatSet(set, view.units.mass);
  return (
    <Ledger
      caption={`Sets of ${name}, newest first`}
      rows={sets}
      keyOf={({ id }) => id}
      most={10}
      columns={[
        { head: 'Date', cell: ({ date }) => formatDayOfYear(date) },
        { head: 'Set', class: 'number', cell: words },
      ]}
      remove={(set) => ({
        kind: 'lift-set',
        id: set.id,
        what: `${name} ${words(set)} of ${formatWeekday(set.date)}`,
      })}
    />
  );
}
