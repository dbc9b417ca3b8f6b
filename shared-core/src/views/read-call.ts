import { lineOf } from '../call/bodyweight-line.ts';
import { fitDays } from '../call/fit.ts';
import type { CallInput } from '../call/input.ts';
import type { LinePoint, Pace, WeeklyCall } from '../call/output.ts';
import { weeklyCall } from '../call/weekly-call.ts';
import type { BodyModel } from '../maintenance/model.ts';
import { type Asked, askedAt, askedOn } from '../targets/asked.ts';
import { unitsOf } from '../units/reader.ts';
import { roundTo } from '../units/round.ts';
import { callInput, targetsOf } from './call-input.ts';
import type { SeasonRecords } from './season-records.ts';

/** The weekly call of a date with what one fit of the model tells beside it. */
export interface CallReading {
  /** What the call looks at; its targets are those that a decision puts in force. */
  input: CallInput;
  /** What is asked from the decision on while the mark stays: protein and fat of the body mass of the line. */
  coming: Asked;
  /** Null without a weigh-in, and when a number can't be right. */
  model: BodyModel | null;
  /** The bodyweight line, every date from the first of the input on; empty without a model. */
  line: readonly LinePoint[];
  call: WeeklyCall | null;
  /** Why there is no call: a number that no scale or tape can have shown is said, not thrown at the page. */
  noCall: string | null;
}

/**
 * Fits the model to the records up to a date, once, and makes the call of that date. A decision puts the body mass of the
 * bodyweight line in force, so the call reckons with the protein and fat of that one: what it forecasts is what is eaten.
 */
export function readCall(records: SeasonRecords, date: string): CallReading {
  const { athlete } = records;
  const input = callInput(records, date);
  const asked = askedOn({ ...records, calls: records.calls.filter((call) => call.date < date) }, date);
  try {
    const model = fitDays(input);
    const line = model === null ? [] : lineOf(model);
    const bodyMassKg = roundTo(line.at(-1)?.massKg.mean ?? asked.bodyMassKg, 0.1);
    const coming = askedAt(athlete, asked.phase, bodyMassKg, asked.mark);
    const ahead = { ...input, targets: targetsOf(coming) };
    const call = weeklyCall(ahead, unitsOf(athlete), model);
    return { input: ahead, coming, model, line, call, noCall: null };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    const noCall = `There is no call, because a number can’t be right: ${error.message}`;
    return { input, coming: asked, model: null, line: [], call: null, noCall };
  }
}

/** The call's pace, as soon as the call itself says that it has enough to go by. */
export function paceOf({ call }: CallReading): Pace | null {
  return call === null || call.verdict === 'not-enough' ? null : call.pace;
}
