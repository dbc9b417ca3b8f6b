import { whatIf } from '../call/what-if.ts';
import type { WeeklyCallRecord } from '../records/kinds.ts';
import { addDays } from '../season/dates.ts';
import { kindOfDay } from '../season/kind-of-day.ts';
import { aimOf } from '../season/phase-in-force.ts';
import { type Asked, askedAt, askedOn } from '../targets/asked.ts';
import { statedCautions } from '../targets/cautions.ts';
import { newestCall } from '../targets/newest-call.ts';
import { unitsOf } from '../units/reader.ts';
import { callDueOn } from './call-due.ts';
import { contestAhead } from './contest.ts';
import { type DayRow, dayRows } from './day-rows.ts';
import { macrosOf } from './macros.ts';
import { newestFirst } from './order.ts';
import { type CallReading, readCall } from './read-call.ts';
import type { SeasonRecords } from './season-records.ts';
import { summarize } from './summarize.ts';
import type { Macros } from './types.ts';
import type { CallRow, PlanAfter, WeekDayRow, WeekView } from './week-types.ts';

const DAYS_SHOWN = 28;
const WEEK = 7;

/** The weekly call of a date with what it rests on, and the decision on it once there is one. */
export function weekView(records: SeasonRecords, date: string): WeekView {
  const { athlete } = records;
  const asked = askedOn(records, date);
  const reading = asked.phase === null ? null : readCall(records, date);
  const decided = records.calls.filter((call) => call.date < date).toSorted(newestFirst);
  const decision = newestCall(records.calls, date);
  const days = dayRows(records, addDays(date, 1 - DAYS_SHOWN), date).map((row) => weekDay(records, row));
  return {
    athlete: athlete.id,
    date,
    units: unitsOf(athlete),
    aim: aimOf(asked.phase),
    cautions: statedCautions(athlete),
    contest: contestAhead(records.phases, date, () => reading ?? readCall(records, date)),
    ...callOrWhyNot(records, asked, reading),
    decision: decision?.date === date ? callRow(decision) : null,
    markInForceG: asked.mark.markG,
    dueOn: callDueOn(records.calls, date),
    days,
    last7: summarize(days.slice(-WEEK)),
    last28: summarize(days),
    earlierCalls: decided.map(callRow),
  };
}

function callOrWhyNot(
  records: SeasonRecords,
  { band }: Asked,
  reading: CallReading | null,
): Pick<WeekView, 'call' | 'noCall' | 'planAfter' | 'carbohydrateBand' | 'whatIf'> {
  if (reading === null) {
    return {
      ...{ call: null, planAfter: null, carbohydrateBand: band, whatIf: [] },
      noCall: 'No phase has started yet. Begin one on the Plan page, and the call has an aim.',
    };
  }
  const { input, coming, model, call, noCall } = reading;
  return {
    call,
    noCall,
    planAfter: call && planAfter(records, coming, call.carbohydrateG),
    carbohydrateBand: coming.band,
    whatIf: model === null ? [] : whatIf(input, model),
  };
}

function planAfter({ athlete }: SeasonRecords, { phase, bodyMassKg, mark }: Asked, markG: number): PlanAfter {
  const after = askedAt(athlete, phase, bodyMassKg, { ...mark, markG });
  return { bodyMassKg, fatFloorG: after.fat.floorG, ...macrosAsked(after) };
}

function weekDay({ athlete }: SeasonRecords, row: DayRow): WeekDayRow {
  return {
    date: row.date,
    kindOfDay: kindOfDay(athlete.training, row.date),
    weightKg: row.weightKg,
    intake: row.eaten === null ? null : macrosOf(row.eaten),
    prescribed: macrosAsked(row.asked),
    complete: row.complete,
    completeStated: row.completeStated,
  };
}

function macrosAsked({ energyKcal, protein, mark, fat }: Asked): Macros {
  return { energyKcal, proteinG: protein.quotaG, carbohydrateG: mark.markG, fatG: fat.targetG };
}

function callRow({
  date,
  verdict,
  decision,
  proposedG,
  markG,
  bodyMassKg,
  summary,
}: WeeklyCallRecord): CallRow {
  return { date, verdict, decision, proposedG, markG, bodyMassKg, summary };
}
