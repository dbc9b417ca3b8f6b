import { energyBalance } from '../body/energy-balance.ts';
import { leanShare } from '../body/lean-share.ts';
import { waistChange } from '../body/waist.ts';
import { bodyweightLine } from '../call/bodyweight-line.ts';
import type { CallInput } from '../call/input.ts';
import { energyKcal } from '../foods/atwater.ts';
import type { ModelDay } from '../maintenance/day-table.ts';
import { fatAfter } from '../maintenance/energy-density.ts';
import type { BodyModel } from '../maintenance/model.ts';
import { daysBetween } from '../season/dates.ts';
import type { Estimate } from '../trend/estimate.ts';
import { z90 } from '../trend/normal.ts';
import type { LeanShareView } from './body-types.ts';
import type { CallReading } from './read-call.ts';

/** Windows in weeks. */
const WINDOWS = [4, 12] as const;
/** Half a year tells what maintenance was; more days only cost time. */
const DAYS_BEFORE = 182;

type Read = Pick<CallReading, 'input' | 'line' | 'model'>;
/** Body fat as tape or calipers of the weeks up to a date found it, % of body mass; null without any. */
type MeasuredOn = (date: string) => number | null;

/** How the changes of the last four and twelve weeks split into lean and fat, as far as the line goes back. */
export function leanSharesOf(read: Read, measuredOn: MeasuredOn): LeanShareView[] {
  return WINDOWS.flatMap((weeks) => overWindow(read, measuredOn, weeks) ?? []);
}

function overWindow(read: Read, measuredOn: MeasuredOn, weeks: number): LeanShareView | null {
  const { input, line, model } = read;
  const start = line.at(-1 - 7 * weeks);
  const end = line.at(-1);
  if (start === undefined || end === undefined || model === null) return null;
  const from = normal(start.tissueKg);
  const to = normal(end.tissueKg);
  const evidence = {
    weeks,
    fatKg: fatKgAt(model, measuredOn(start.day), from.mean),
    tissueKg: { mean: to.mean - from.mean, sd: Math.hypot(from.sd, to.sd) },
    energyKcal: energyOver(input, start.day, end.day),
    waistCm: waistChange(
      input.waist.map(({ day, cm }) => ({ day: daysBetween(start.day, day), cm })),
      0,
      7 * weeks,
    ),
  };
  return {
    weeks,
    ...leanShare(evidence),
    from: [
      ...(evidence.energyKcal === null ? [] : (['energy'] as const)),
      ...(evidence.waistCm === null ? [] : (['tape'] as const)),
    ],
  };
}

/** Fat mass in kg at a mass of tissue: as it was measured of late, else that of the model's start, moved along the Forbes curve. */
function fatKgAt({ filter }: BodyModel, measuredPercent: number | null, tissueKg: number): number {
  if (measuredPercent !== null) return (measuredPercent * tissueKg) / 100;
  const { startFatKg, startMassKg } = filter.setup;
  return fatAfter(startFatKg, tissueKg - startMassKg);
}

function normal({ mean, interval90 }: Estimate): { mean: number; sd: number } {
  return { mean, sd: (interval90.high - interval90.low) / 2 / z90 };
}

/**
 * Energy eaten less used between the mornings of two dates, with maintenance as it was known on the first: later weighing
 * may not be counted twice.
 */
function energyOver(input: CallInput, from: string, to: string): { mean: number; sd: number } | null {
  const before = input.days.filter(({ day }) => day <= from).slice(-DAYS_BEFORE);
  const known = bodyweightLine({ ...input, days: before }).at(-1);
  if (known === undefined) return null;
  const between = input.days.filter(({ day }) => day >= from && day < to);
  return energyBalance(between.map(loggedKcal), normal(known.maintenanceKcal));
}

function loggedKcal({ intake }: ModelDay): number | null {
  return intake?.complete ? energyKcal(intake) : null;
}
