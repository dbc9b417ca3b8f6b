import { ODD } from '../maintenance/filter.ts';
import type { BodyModel } from '../maintenance/model.ts';
import { dayNumber } from '../units/day-number.ts';
import type { CallInput } from './input.ts';
import type { WouldChange } from './output.ts';
import { counted } from './texts.ts';

/** What is missing for a call, in words; null when there is enough. */
export interface Missing {
  text: string;
  wouldChange: WouldChange[];
}

/** Three mornings give a first answer; an older line is stale (common practice, no source). */
const LEAST_WEIGH_INS = 3;
const FRESH_DAYS = 7;
const LATELY_DAYS = 14;

/** Whether there is too little to say anything: fewer than three weigh-ins in two weeks, or none for a week. */
export function missingFor(input: CallInput): Missing | null {
  const last = dayNumber(input.days.at(-1)?.day ?? '');
  const weighed = input.days.filter((day) => day.weightKg !== null).map((day) => dayNumber(day.day));
  const lately = weighed.filter((day) => last - day < LATELY_DAYS).length;
  const newest = weighed.at(-1);
  const stale = newest === undefined ? Number.POSITIVE_INFINITY : last - newest;
  if (lately >= LEAST_WEIGH_INS && stale <= FRESH_DAYS) return null;
  const text =
    newest === undefined
      ? 'There is no weigh-in yet.'
      : stale > FRESH_DAYS
        ? `The last weigh-in is ${stale} days old.`
        : `There ${lately === 1 ? 'is only 1 weigh-in' : `are only ${lately} weigh-ins`} in the last two weeks.`;
  return {
    text,
    wouldChange: [
      {
        code: 'more-weigh-ins',
        text: 'Weigh in each morning, after the toilet and before food: three mornings give a first answer, seven a better one.',
        numbers: { weighIns: lately, needed: LEAST_WEIGH_INS },
      },
      {
        code: 'more-log',
        text: 'Log what you eat on as many days as you can, and mark a day that is not complete.',
        numbers: {},
      },
    ],
  };
}

/** Whether too few weigh-ins are left once those are set aside that stand too far from the line to be believed. */
export function missingBesideOdd(input: CallInput, { table, track }: BodyModel): Missing | null {
  const isOdd = (day: string) => track.weighIn[dayNumber(day) - table.firstDay] === ODD;
  const days = input.days.map((day) => (isOdd(day.day) ? { ...day, weightKg: null } : day));
  if (missingFor({ ...input, days }) === null) return null;
  const odd = days.slice(-LATELY_DAYS).filter(({ day }) => isOdd(day)).length;
  return {
    text: `${counted(odd, 'weigh-in')} of late ${odd === 1 ? 'stands' : 'stand'} too far from the line to be believed.`,
    wouldChange: [
      {
        code: 'more-weigh-ins',
        text: 'Look at them: kilograms or pounds, your own or somebody else’s? Correct the wrong ones; right ones are believed once a few more agree.',
        numbers: { weighIns: odd, needed: LEAST_WEIGH_INS },
      },
    ],
  };
}
