import type { LinePoint } from '../call/output.ts';
import type { BodyModel } from '../maintenance/model.ts';
import { LONGEST_LAG } from '../maintenance/smoother.ts';
import type { Tape } from '../records/kinds.ts';
import { bodyMassInForce } from '../targets/body-mass.ts';
import { personOn } from '../targets/person.ts';
import { type Estimate, estimate } from '../trend/estimate.ts';
import { unitsOf } from '../units/reader.ts';
import type { BodyPoint, BodyView } from './body-types.ts';
import { calipersOf } from './calipers-of.ts';
import { fatFreeIndexOf } from './fat-free-index-of.ts';
import { fatOn, measuredFat } from './fat-on.ts';
import { leanSharesOf } from './lean-share-of.ts';
import { byInstant, oldestFirst } from './order.ts';
import { paceWedge } from './pace-wedge.ts';
import { paceOf, readCall } from './read-call.ts';
import type { SeasonRecords } from './season-records.ts';

/** As far back as the model tells a change of tissue with its exact interval. */
const CHANGE_WEEKS = LONGEST_LAG / 7;

/** The body up to a date: weigh-ins and the line over them, pace, tape, fat, lean share, calls, and the aim ahead. */
export function bodyView(records: SeasonRecords, date: string): BodyView {
  const { athlete } = records;
  const reading = readCall(records, date);
  const { input } = reading;
  // From the first weigh-in on; the input begins with the first entry.
  const line = reading.line.slice(reading.line.findIndex((point) => point.weightKg !== null));
  const upTo = <T extends { date: string; id: string }>(readings: readonly T[]) =>
    readings.filter((reading) => reading.date <= date).toSorted(oldestFirst);
  const [tape, calipers, calls] = [upTo(records.tape), upTo(records.calipers), upTo(records.calls)];
  const fat = fatOn(athlete, { tape, calipers }, date);
  return {
    athlete: athlete.id,
    date,
    units: unitsOf(athlete),
    person: { sex: athlete.sex, ageYears: personOn(athlete, date).ageYears },
    bodyMassInForceKg: bodyMassInForce(athlete.startMassKg, records.calls, date),
    points: bodyPoints(records, line),
    pace: paceOf(reading),
    fourWeeksKg: changeOf(reading.model, line),
    tape: bySite(tape),
    calipers: calipersOf(athlete, calipers),
    fat,
    fatFreeIndex: fatFreeIndexOf(athlete, line.at(-1)?.massKg.mean ?? null, fat),
    leanShares: leanSharesOf({ ...reading, line }, (day) => measuredFat(athlete, { tape, calipers }, day)),
    cycleStarts: upTo(records.cycleStarts)
      .map(({ id, date }) => ({ id, date }))
      .reverse(),
    scaleShifts: upTo(records.scaleShifts)
      .map(({ id, date, cause }) => ({ id, date, cause }))
      .reverse(),
    flags: calls.map(({ date, verdict, decision, markG }) => ({ date, verdict, decision, markG })),
    wedge: paceWedge(line, input.aim, calls.at(-1)?.date ?? null),
  };
}

function bodyPoints({ weighIns }: SeasonRecords, line: readonly LinePoint[]): BodyPoint[] {
  const byDate = Map.groupBy(weighIns, (weighIn) => weighIn.date);
  return line.map((point) => ({
    date: point.day,
    weighIns: (byDate.get(point.day) ?? [])
      .toSorted(byInstant)
      .map(({ id, kg, note }) => ({ id, kg, note: note ?? null })),
    lineKg: point.massKg,
    used: point.weighIn,
  }));
}

/** Change of tissue over the last weeks with its interval; null while the line does not go back so far. */
function changeOf(model: BodyModel | null, line: readonly LinePoint[]): Estimate | null {
  if (model === null || line.length <= 7 * CHANGE_WEEKS) return null;
  const { mean, sd } = model.paceKgPerWeek(7 * CHANGE_WEEKS);
  return estimate(CHANGE_WEEKS * mean, CHANGE_WEEKS * sd);
}

function bySite(tape: readonly Tape[]): BodyView['tape'] {
  return [...Map.groupBy(tape, (reading) => reading.site)]
    .map(([site, readings]) => ({ site, readings: readings.map(({ id, date, cm }) => ({ id, date, cm })) }))
    .sort((a, b) => (a.site < b.site ? -1 : 1));
}
