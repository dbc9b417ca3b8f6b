import type { LinePoint } from '../call/output.ts';
import type { Tape } from '../records/kinds.ts';
import { addDays } from '../season/dates.ts';
import { bodyMassInForce } from '../targets/body-mass.ts';
import { personOn } from '../targets/person.ts';
import type { Estimate } from '../trend/estimate.ts';
import { unitsOf } from '../units/reader.ts';
import type { BodyPoint, BodyView } from './body-types.ts';
import { calipersOf } from './calipers-of.ts';
import { fatFreeIndexOf } from './fat-free-index-of.ts';
import { fatOn, measuredFat } from './fat-on.ts';
import { leanSharesOf } from './lean-share-of.ts';
import { oldestFirst } from './order.ts';
import { paceWedge } from './pace-wedge.ts';
import { paceOf, readCall } from './read-call.ts';
import type { SeasonRecords } from './season-records.ts';

const MONTH_DAYS = 30;

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
    aim: input.aim,
    bodyMassInForceKg: bodyMassInForce(athlete.startMassKg, records.calls, date),
    points: bodyPoints(records, line),
    pace: paceOf(reading),
    monthKg: changeOver(line, MONTH_DAYS),
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
      .toSorted((a, b) => a.at - b.at || (a.id < b.id ? -1 : 1))
      .map(({ id, kg, note }) => ({ id, kg, note: note ?? null })),
    lineKg: point.massKg,
    used: point.weighIn,
  }));
}

/** Change of the line over so many days. The two ends are taken as independent, which makes the interval too wide, not too narrow. */
function changeOver(line: readonly LinePoint[], days: number): Estimate | null {
  const end = line.at(-1);
  if (end === undefined) return null;
  const start = line.find((point) => point.day === addDays(end.day, -days));
  if (start === undefined) return null;
  const half = (estimate: Estimate) => (estimate.interval90.high - estimate.interval90.low) / 2;
  const mean = end.massKg.mean - start.massKg.mean;
  const reach = Math.hypot(half(end.massKg), half(start.massKg));
  return { mean, interval90: { low: mean - reach, high: mean + reach } };
}

function bySite(tape: readonly Tape[]): BodyView['tape'] {
  return [...Map.groupBy(tape, (reading) => reading.site)]
    .map(([site, readings]) => ({ site, readings: readings.map(({ id, date, cm }) => ({ id, date, cm })) }))
    .sort((a, b) => (a.site < b.site ? -1 : 1));
}
