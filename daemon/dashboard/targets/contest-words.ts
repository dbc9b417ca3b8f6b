import { formatDayOfYear } from '@platewright/core/ui/format-date.ts';
import { massFigure } from '@platewright/core/ui/number.ts';
import { formatBodyMass } from '@platewright/core/units/mass.ts';
import type { Units } from '@platewright/core/units/reader.ts';
import type { ContestAhead } from '@platewright/core/views/contest.ts';
import { range } from '../shell/range.ts';

/** How long until the contest, and what body mass to expect then: an expectation, which no pace promises. */
export function contestWords(contest: ContestAhead, { mass }: Units): string {
  const { date, daysLeft, throughPhases, atAimKg, atPaceKg } = contest;
  const paces = throughPhases ? 'the paces that your phases aim for' : 'the pace aimed for';
  const figure = (kg: number) => massFigure(kg, mass);
  const onward =
    atPaceKg &&
    `; if the pace of the last 14 days went on, ${range(atPaceKg, figure)} ${mass} (its 90 % interval)`;
  return `${timeLeft(daysLeft)} to the contest on ${formatDayOfYear(date)}. At ${paces}, expect about ${formatBodyMass(atAimKg, mass)} then${onward ?? ''}.`;
}

/** Weeks as coaches count them, with the days left over. */
function timeLeft(days: number): string {
  const [weeks, rest] = [Math.floor(days / 7), days % 7];
  return [counted(weeks, 'week'), counted(rest, 'day')].filter(Boolean).join(' and ');
}

function counted(count: number, what: string): string {
  return count === 0 ? '' : `${count} ${what}${count === 1 ? '' : 's'}`;
}
