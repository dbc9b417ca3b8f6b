import { addDays, isoWeekday } from '../season/dates.ts';
import { kindOfDay } from '../season/kind-of-day.ts';
import { aimOf, phaseInForce } from '../season/phase-in-force.ts';
import { dayTargets } from '../targets/day-targets.ts';
import { contestAhead } from './contest.ts';
import type { PlanView } from './plan-types.ts';
import { readCall } from './read-call.ts';
import type { SeasonRecords } from './season-records.ts';

const CALENDAR_DAYS = 14;

/**
 * The set-up, the phases, what a session day and a recovery day ask for on a date, and the fourteen dates from it on. All
 * records are needed only where a contest lies ahead; else phases and calls are enough.
 */
export function planView(records: SeasonRecords, date: string): PlanView {
  const { athlete, phases } = records;
  const inForce = phaseInForce(phases, date);
  return {
    date,
    athlete,
    phases: phases.toSorted((a, b) => (a.from + a.id < b.from + b.id ? -1 : 1)),
    phaseInForce: inForce?.id ?? null,
    contest: contestAhead(phases, date, () => readCall(records, date)),
    session: dayTargets(records, date, 'session'),
    recovery: dayTargets(records, date, 'recovery'),
    calendar: Array.from({ length: CALENDAR_DAYS }, (_, i) => {
      const ahead = addDays(date, i);
      return {
        date: ahead,
        weekday: isoWeekday(ahead),
        kindOfDay: kindOfDay(athlete.training, ahead),
        phase: aimOf(phaseInForce(phases, ahead)).phase,
      };
    }),
  };
}
