import { formatWeekday } from '@platewright/core/ui/format-date.ts';
import { paceFigure } from '@platewright/core/ui/number.ts';
import type { RosterRow } from '@platewright/core/views/roster.ts';
import type { ComponentChildren } from 'preact';
import { hrefOf, type Page } from '../../router.ts';
import { useAthlete } from '../../state/athlete.tsx';

/** A line for each athlete, by name; what is due stands first in its own words, not in a colour. */
export function RosterTable({ rows }: { rows: readonly RosterRow[] }) {
  return (
    <table class="ledger">
      <caption class="unseen">Athletes, by name</caption>
      <thead>
        <tr>
          <th scope="col">Athlete</th>
          <th scope="col">Phase</th>
          <th scope="col" class="number">
            Pace, % a week
          </th>
          <th scope="col" class="wide-only number">
            90 % interval
          </th>
          <th scope="col" class="wide-only number">
            Band
          </th>
          <th scope="col">Weekly call</th>
        </tr>
      </thead>
      <tbody>
        {rows
          .toSorted((a, b) => a.name.localeCompare(b.name))
          .map((row) => (
            <AthleteRow key={row.athlete} row={row} />
          ))}
      </tbody>
    </table>
  );
}

function AthleteRow({ row }: { row: RosterRow }) {
  const { pace, phase } = row;
  return (
    <tr>
      <th scope="row">
        <To athlete={row.athlete} page="today">
          {row.name}
        </To>
      </th>
      <td>{phase ?? <span class="soft">none yet</span>}</td>
      {pace ? (
        <>
          <td class="number">{paceFigure(pace.meanPercentPerWeek)}</td>
          <td class="number soft wide-only">
            {paceFigure(pace.interval90.low)} to {paceFigure(pace.interval90.high)}
          </td>
          <td class="number soft wide-only">
            {paceFigure(pace.band.low)} to {paceFigure(pace.band.high)}
          </td>
        </>
      ) : (
        <>
          <td class="number soft">not enough to say</td>
          <td class="wide-only" />
          <td class="wide-only" />
        </>
      )}
      <td>
        {row.callDueOn === null ? (
          <span class="soft">none</span>
        ) : (
          <To athlete={row.athlete} page="week">
            {row.due ? 'due' : `on ${formatWeekday(row.callDueOn)}`}
            <span class="unseen"> for {row.name}</span>
          </To>
        )}
      </td>
    </tr>
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
