import { at } from '../maintenance/at.ts';
import { NONE, ODD, PART } from '../maintenance/filter.ts';
import type { BodyModel } from '../maintenance/model.ts';
import { estimate } from '../trend/estimate.ts';
import { isoDay } from '../units/day-number.ts';
import { fitDays } from './fit.ts';
import type { CallInput } from './input.ts';
import type { LinePoint } from './output.ts';

/**
 * The bodyweight line for every date from the first day to the last, smoothed with all that came later; kilograms, kcal/d.
 * Empty when there is no weigh-in. Throws a RangeError for numbers that are none and days out of order.
 */
export function bodyweightLine(input: CallInput): LinePoint[] {
  const model = fitDays(input);
  return model === null ? [] : lineOf(model);
}

/** The line of a model that was fitted already. */
export function lineOf(model: BodyModel): LinePoint[] {
  const { table, track, smoothed } = model;
  const points: LinePoint[] = [];
  for (let row = 0; row < table.count; row++) {
    const weight = at(table.weightKg, row);
    points.push({
      day: isoDay(table.firstDay + row),
      weightKg: Number.isNaN(weight) ? null : weight,
      massKg: estimate(at(smoothed.line, row), Math.sqrt(at(smoothed.lineVar, row))),
      tissueKg: estimate(at(smoothed.tissue, row), Math.sqrt(at(smoothed.tissueVar, row))),
      maintenanceKcal: estimate(at(smoothed.maintenance, row), Math.sqrt(at(smoothed.maintenanceVar, row))),
      weighIn: counted(track.weighIn[row] ?? NONE),
    });
  }
  return points;
}

function counted(code: number): LinePoint['weighIn'] {
  if (code === NONE) return 'none';
  return code === ODD ? 'odd' : code === PART ? 'part' : 'used';
}
