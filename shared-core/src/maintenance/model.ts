import { median } from '../trend/robust.ts';
import { dayNumber } from '../units/day-number.ts';
import { at } from './at.ts';
import { type Beside, type DayGrams, type DayTable, has, type ModelDay } from './day-table.ts';
import { FEW_LOGS, layOutDays } from './days.ts';
import { type Eating, eatingHabit } from './eating.ts';
import { type FilterTrack, logLikelihood, runFilter } from './filter.ts';
import { explainJumps } from './jumps.ts';
import { estimateNoise, type NoiseLevels, usualNoise } from './noise.ts';
import { type FilterSetup, keepPerKg, type RunningFilter } from './open-filter.ts';
import { maintenanceVariance, type SmoothedDays, smooth } from './smoother.ts';
import { type Person, startFatKg, startMaintenance } from './start-estimate.ts';
import { startingAt } from './starting-at.ts';
import { MASS, maintenanceOf } from './state.ts';
import { tellShifts } from './told-shifts.ts';

/** A mean and its standard deviation. */
export interface Known {
  mean: number;
  sd: number;
}

/** Everything the days say about the body: fitted noise, filter at the last day, smoothed past. */
export interface BodyModel {
  table: DayTable;
  noise: NoiseLevels;
  filter: RunningFilter;
  track: FilterTrack;
  smoothed: SmoothedDays;
  eating: Eating;
  /** Weigh-ins there were. */
  weighIns: number;
  /** Tissue on the morning after the last day, kg. */
  tissueKg: Known;
  /** Maintenance after the last day, kcal/d in units of the log. */
  maintenanceKcal: Known;
  /** Tissue change over the last `days` days, kg a week. */
  paceKgPerWeek(days: number): Known;
}

/** Unforeseen steps of maintenance: about three in a year, of some 200 kcal/d (common practice, no source). */
const stepSearch = { hypotheses: 9, everyDays: 4, chance: 4 / 120, stepVar: 210 ** 2 };
/** Slow drift, standard deviation of 16 kcal/d after a week (common practice, no source). */
const driftVar = 16 ** 2 / 7;
/** The noise grid looks at so many days at most, and needs so many readings (common practice, no source). */
const NOISE_DAYS = 140;
const NOISE_READINGS = 10;

/** Fits the model. Throws a RangeError when no day has a weigh-in. */
export function fitModel(
  person: Person,
  days: readonly ModelDay[],
  fallback: DayGrams,
  beside: Beside = {},
): BodyModel {
  const startMassKg = firstReadings(days);
  const start = startMaintenance(person, startMassKg);
  const table = layOutDays(days, fallback, start.kcal, beside);
  const setup: FilterSetup = {
    startMassKg,
    startFatKg: startFatKg(person, startMassKg),
    ...inLogUnits(start, table),
    noise: usualNoise(startMassKg),
    search: stepSearch,
    driftVar,
    cycle: (beside.cycleStarts ?? []).length > 0,
    zeroMoves: false,
    firstWaistCm: firstWaist(table),
  };
  const weighIns = table.weightKg.reduce((sum, kg) => sum + (Number.isNaN(kg) ? 0 : 1), 0);
  tellShifts(table, beside.shifts ?? [], startMassKg);
  explainJumps(setup, table);
  setup.zeroMoves = table.shiftVar.some((variance) => variance > 0);
  if (weighIns >= NOISE_READINGS) setup.noise = noiseOf(setup, table);
  const { filter, track } = runFilter(setup, table);
  const smoothed = smooth(filter, track, table);
  const { mean, cov, size } = filter.bank;
  return {
    table,
    noise: setup.noise,
    filter,
    track,
    smoothed,
    eating: eatingHabit(table),
    weighIns,
    tissueKg: { mean: at(mean, MASS), sd: Math.sqrt(at(cov, MASS * (size + 1))) },
    maintenanceKcal: {
      mean: maintenanceOf(mean, 0, filter.move),
      sd: Math.sqrt(maintenanceVariance(cov, size, keepPerKg)),
    },
    paceKgPerWeek: (span) => paceOf(filter, smoothed, table.count, span),
  };
}

/** Days at the start whose logs tell the units of the log, days by the plan that stand against them, and how far off one counts (common practice, no source). */
const UNIT_DAYS = 28;
const PLAN_DAYS = 3;
const UNIT_RATIO = { low: 0.5, high: 1.5 };
/** Share of a gap between log and plan that is taken for unlogged food, and how unsure that is (common practice, no source). */
const UNLOGGED_SHARE = 0.85;
const UNLOGGED_SD = 0.5;
/** How far someone who logs next to nothing may eat from the plan all along, as a share (common practice, no source). */
const NO_LOG_SD = 0.1;

/** The start estimate is in units of a usual log, the model in those of this one: someone who logs less than was asked for may well eat it. */
function inLogUnits(
  start: { kcal: number; sd: number },
  table: DayTable,
): Pick<FilterSetup, 'maintenance' | 'surplusEffect'> {
  let gap = 0;
  let days = PLAN_DAYS;
  for (let row = 0; row < Math.min(UNIT_DAYS, table.count); row++) {
    if (!has(table.loggedKcal, row) || !has(table.prescribedKcal, row)) continue;
    const ratio = at(table.loggedKcal, row) / Math.max(500, at(table.prescribedKcal, row));
    gap += Math.max(UNIT_RATIO.low, Math.min(UNIT_RATIO.high, ratio)) - 1;
    days++;
  }
  const few = days - PLAN_DAYS < FEW_LOGS;
  const mean = few ? 0 : gap / days;
  const doubt = (few ? NO_LOG_SD : UNLOGGED_SD * Math.abs(mean)) * start.kcal;
  const share = 1 + UNLOGGED_SHARE * mean;
  return {
    maintenance: { kcal: start.kcal * share, sd: Math.hypot(start.sd, doubt) },
    surplusEffect: 1 / share,
  };
}

function paceOf(filter: RunningFilter, smoothed: SmoothedDays, count: number, span: number): Known {
  const { mean, cov, size } = filter.bank;
  const lag = Math.max(1, Math.min(span, count));
  const row = count - lag;
  const now = at(cov, MASS * (size + 1));
  const variance = now + at(smoothed.tissueVar, row) - 2 * smoothed.tissueCovariance(lag);
  return {
    mean: (7 * (at(mean, MASS) - at(smoothed.tissue, row))) / lag,
    sd: (7 * Math.sqrt(Math.max(0, variance))) / lag,
  };
}

/** The first reading of the tape, NaN when there are not two. */
function firstWaist({ waistCm }: DayTable): number {
  const readings = waistCm.filter((cm) => !Number.isNaN(cm));
  return readings.length < 2 ? Number.NaN : at(readings, 0);
}

/** Middle of the first five readings within a week of the first (common practice, no source). */
function firstReadings(days: readonly ModelDay[]): number {
  const first = days.findIndex((day) => day.weightKg !== null);
  const from = dayNumber(days[first]?.day ?? '');
  const readings: number[] = [];
  for (const day of days.slice(Math.max(0, first), first + 7))
    if (day.weightKg !== null && dayNumber(day.day) - from < 7) readings.push(day.weightKg);
  if (readings.length === 0) throw new RangeError('The model needs at least one weigh-in.');
  return median(readings.slice(0, 5));
}

function noiseOf(setup: FilterSetup, table: DayTable): NoiseLevels {
  // Up to the last reading, not to the last day: after a long pause there would be none to start from.
  const readings = table.weightKg.findLastIndex((kg) => !Number.isNaN(kg)) + 1;
  const first = Math.max(0, readings - NOISE_DAYS);
  const single = startingAt(setup, table, first);
  return estimateNoise(single.startMassKg, (noise) => logLikelihood({ ...single, noise }, table, first));
}
