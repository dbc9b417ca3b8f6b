import type { BodyMassUnit } from '../src/units/mass.ts';
import { formatBodyMass } from '../src/units/mass.ts';
import type { BodyPoint, BodyView } from '../src/views/body-types.ts';
import { formatDayOfYear } from './format-date.ts';
import { massFigure } from './number.ts';

/** What the bodyweight line shows, in sentences, for those who do not see it. */
export function bodyweightWords(
  points: readonly BodyPoint[],
  wedge: BodyView['wedge'],
  flags: BodyView['flags'],
  unit: BodyMassUnit,
): string {
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last) return 'Bodyweight line: no weigh-in yet.';
  const { low, high } = last.lineKg.interval90;
  const weighIns = points.reduce((sum, point) => sum + point.weighIns.length, 0);
  const sentences = [
    `Bodyweight line from ${formatDayOfYear(first.date)} to ${formatDayOfYear(last.date)}, ${weighIns} weigh-ins.`,
    `It starts at ${formatBodyMass(first.lineKg.mean, unit)} and stands at ${formatBodyMass(last.lineKg.mean, unit)},`,
    `90 % interval ${massFigure(low, unit)} to ${massFigure(high, unit)}.`,
  ];
  if (wedge) {
    sentences.push(
      `The pace band leads to ${massFigure(wedge.lowKg, unit)} to ${formatBodyMass(wedge.highKg, unit)}`,
      `by ${formatDayOfYear(wedge.to)}.`,
    );
  }
  if (flags.length > 0) sentences.push(`${flags.length} weekly calls on the time axis.`);
  return sentences.join(' ');
}
