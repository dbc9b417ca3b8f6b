import { energyBalance } from '../body/energy-balance.ts';
import { leanShare } from '../body/lean-share.ts';
import { waistChange } from '../body/waist.ts';
import { bodyweightLine } from '../call/bodyweight-line.ts';
import type { CallDay, CallInput } from '../call/input.ts';
import type { LinePoint } from '../call/output.ts';
import { energyKcal } from '../foods/atwater.ts';
import { startFatKg } from '../maintenance/start-estimate.ts';
import { daysBetween } from '../season/dates.ts';
import type { Estimate } from '../trend/estimate.ts';
import { z90 } from '../trend/reading.ts';
import type { LeanShareView } from './body-types.ts';

/** Windows in weeks. */
const WINDOWS = [4, 12] as const;
/** Half a year tells what maintenance was; more days only cost time. */
const DAYS_BEFORE = 182;

/** How the changes of the last four and twelve weeks split into lean and fat, as far as the line goes back. */
export function leanSharesOf(input: CallInput, line: readonly LinePoint[]): LeanShareView[] {
  return WINDOWS.flatMap((weeks) => overWindow(input, line, weeks) ?? []);
}

function overWindow(input: CallInput, line: readonly LinePoint[], weeks: number): LeanShareView | null {
  const start = line.at(-1 - 7 * weeks);
  const end = line.at(-1);
  if (start === undefined || end === undefined) return null;
  const from = normal(start.tissueKg);
  const to = normal(end.tissueKg);
  const evidence = {
    weeks,
    fatKg: startFatKg(input.athlete, from.mean),
    tissueKg: { mean: to.mean - from.mean, sd: Math.hypot(from.sd, to.sd) },
    energyKcal: energyOver(input, start.day),
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

function normal({ mean, interval90 }: Estimate): { mean: number; sd: number } {
  return { mean, sd: (interval90.high - interval90.low) / 2 / z90 };
}

/** Energy eaten less used since `from`, with maintenance as it was known then: later weighing may not be counted twice. */
function energyOver(input: CallInput, from: string): { mean: number; sd: number } | null {
  const before = input.days.filter(({ day }) => day <= from).slice(-DAYS_BEFORE);
  const known = bodyweightLine({ ...input, days: before }).at(-1);
  if (known === undefined) return null;
  const after = input.days.filter(({ day }) => day > from);
  return energyBalance(after.map(loggedKcal), normal(known.maintenanceKcal));
}

function loggedKcal({ intake }: CallDay): number | null {
  return intake?.complete ? energyKcal(intake) : null;
}
