import { at } from '../maintenance/at.ts';
import type { ToldShift } from '../maintenance/day-table.ts';
import { dayNumber } from '../units/day-number.ts';
import type { EvidenceItem } from './output.ts';
import type { Situation } from './situation.ts';
import { days, type Say } from './texts.ts';

/** A smaller move of the scale's zero that nobody told of is not worth a word, kg (common practice, no source). */
const SAID_SHIFT_KG = 0.5;
/** Days over which a move that nobody told of is looked for, and one that was told is spoken of (common practice, no source). */
const LOOK_BACK = { found: 14, told: 28 };

/** What moved the readings of late without being tissue: told by the athlete, or found. */
export function shiftItems({ model, input }: Situation, say: Say): EvidenceItem[] {
  const { smoothed, table } = model;
  const last = table.count - 1;
  const zeroAt = (row: number) => at(smoothed.zero, Math.max(0, row));
  const shifts = (input.shifts ?? [])
    .map(({ day, cause }) => ({ cause, row: dayNumber(day) - table.firstDay }))
    .filter(({ row }) => row > 0 && row <= last);
  // Another scale moves the zero on its morning alone; what is left of the way since is that of creatine.
  const onMorning = (row: number) => zeroAt(row) - zeroAt(row - 1);
  const byScales = shifts.filter(({ cause }) => cause === 'another scale').map(({ row }) => row);
  const since = (from: number) =>
    byScales
      .filter((row) => row >= from)
      .reduce((kg, row) => kg - onMorning(row), zeroAt(last) - zeroAt(from - 1));
  const told = shifts
    .filter(({ row }) => last - row <= LOOK_BACK.told)
    .map(({ cause, row }) =>
      toldItem(cause, cause === 'another scale' ? onMorning(row) : since(row), last - row, say),
    );
  if (told.length > 0) return told;
  const shiftKg = zeroAt(last) - zeroAt(last - LOOK_BACK.found);
  if (Math.abs(shiftKg) <= SAID_SHIFT_KG) return [];
  return [
    {
      code: 'scale-shift',
      text: `The readings moved by ${say.massChange(shiftKg)} at once and stayed there: another scale, or water. It is not counted as tissue.`,
      numbers: { shiftKg },
      used: false,
      why: 'Tissue cannot move that fast. If you know what it was, record it on the Body page: the call is then surer.',
    },
  ];
}

function toldItem(cause: ToldShift['cause'], shiftKg: number, ago: number, say: Say): EvidenceItem {
  const since = ago === 0 ? 'today' : `${days(ago)} ago`;
  const move = say.massChange(shiftKg);
  return {
    code: 'scale-shift',
    text:
      cause === 'another scale'
        ? `You changed the scale ${since}: the readings since stand ${move} off those before.`
        : `You began or stopped creatine ${since}: about ${move} since is its water.`,
    numbers: { shiftKg, daysAgo: ago },
    used: false,
    why: 'As you recorded it; it is not counted as tissue.',
  };
}
