import { formatWeekday } from '@platewright/core/ui/format-date.ts';
import { paceFigure } from '@platewright/core/ui/number.ts';
import type { RosterRow } from '@platewright/core/views/roster.ts';
import type { ComponentChildren } from 'preact';
import { hrefOf, type Page } from '../../router.ts';
import { Ledger } from '../../shell/ledger.tsx';
import { range } from '../../shell/range.ts';
import { useAthlete } from '../../state/athlete.tsx';

/** A line for each athlete, by name; what is due says so in words, not in a colour. */
export function RosterTable({ rows }: { rows: readonly RosterRow[] }) {
  return (
    <Ledger
      caption="Athletes, by name"
      rows={rows.toSorted((a, b) => a.name.localeCompare(b.name))}
      keyOf={({ athlete }) => athlete}
      columns={[
        {
          head: 'Athlete',
          class: 'breaks',
          cell: ({ athlete, name }) => (
            <To athlete={athlete} page="today">
              {name}
            </To>
          ),
        },
        { head: 'Phase', cell: ({ phase }) => phase ?? <span class="soft">none</span> },
        {
          head: 'Pace, % a week',
          class: 'number wraps',
          cell: ({ pace }) =>
            pace ? paceFigure(pace.meanPercentPerWeek) : <span class="soft">not enough to say</span>,
        },
        {
          head: '90 % interval',
          class: 'number soft wide-only',
          cell: ({ pace }) => pace && range(pace.interval90, paceFigure),
        },
        {
          head: 'Band',
          class: 'number soft wide-only',
          cell: ({ pace }) => pace && range(pace.band, paceFigure),
        },
        { head: 'Weekly call', cell: weeklyCall },
      ]}
    />
  );
}

function weeklyCall({ athlete, name, callDueOn, due, stop }: RosterRow) {
  if (callDueOn === null) return <span class="soft">none</span>;
  return (
    <>
      <To athlete={athlete} page="week">
        {due ? 'due' : `on ${formatWeekday(callDueOn)}`}
        <span class="unseen"> for {name}</span>
      </To>
      {stop && (
        <b class="block small">
          ▲ stop<span class="unseen">: to be seen by a professional first</span>
        </b>
      )}
    </>
  );
}

/** A link to a page of an athlete. */
function To({ athlete, page, children }: { athlete: string; page: Page; children: ComponentChildren }) {
  const { choose } = useAthlete();
  return (
    <a href={hrefOf(page)} onClick={() => choose(athlete)}>
      {children}
    </a>
  );
}
