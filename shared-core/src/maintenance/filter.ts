import { at } from './at.ts';
import {
  bankCorrect,
  bankExpect,
  bankLoosen,
  bankMix,
  bankPredict,
  bankTape,
  type StepSearch,
} from './bank.ts';
import { type DayTable, has } from './day-table.ts';
import { fatAfter, kgPerSurplusKcal } from './energy-density.ts';
import { type FilterSetup, openFilter, type RunningFilter } from './open-filter.ts';
import { linearise, MASS } from './state.ts';
import { tapeSight } from './tape.ts';

/** How a reading counted. */
export const NONE = 0;
const USED = 1;
export const PART = 2;
export const ODD = 3;

/** Moments after each day and what is needed to walk back, in one block of memory. */
export interface FilterTrack {
  size: number;
  /** State on the morning of each row, after the reading. */
  means: Float64Array;
  covs: Float64Array;
  /** The move from each row to the next. */
  kgPerKcal: Float64Array;
  weighIn: Uint8Array;
}

/** Misses beyond so many standard deviations count less, by their cube, and beyond the second number not at all (common practice, no source). */
const DOUBT = 2.6;
const ODD_AT = 4.2;
/** Log density of an odd reading, so that no noise level wins by calling readings odd: one in 200, anywhere within ±5 kg (common practice, no source). */
const ODD_LOG_DENSITY = Math.log(1 / 200 / 10);

/** Reads the morning of a row: takes the weigh-in in, as far as it is believed. Returns how it counted. */
export function readMorning(filter: RunningFilter, table: DayTable, row: number): number {
  const { bank, sight } = filter;
  if (sight.zero >= 0 && at(table.shiftVar, row) > 0) bankLoosen(bank, sight.zero, at(table.shiftVar, row));
  const counted = weigh(filter, table, row);
  if (has(table.waistCm, row)) readTape(filter, at(table.waistCm, row));
  bankMix(bank);
  return counted;
}

function weigh(filter: RunningFilter, table: DayTable, row: number): number {
  if (!has(table.weightKg, row)) return NONE;
  const { bank, setup, expectation } = filter;
  look(filter, table, row);
  const reading = at(table.weightKg, row);
  const scaleVar = setup.noise.scaleSd ** 2 + table.resolutionKg ** 2 / 12;
  bankExpect(bank, filter.sight, scaleVar, reading, expectation);
  const miss = at(expectation, 0);
  const spread = at(expectation, 1);
  const z = Math.abs(miss) / Math.sqrt(spread);
  if (z > ODD_AT) {
    bank.logLikelihood += ODD_LOG_DENSITY;
    return ODD;
  }
  if (z <= DOUBT) {
    bankCorrect(bank, 0);
    return USED;
  }
  bankCorrect(bank, spread * ((z / DOUBT) ** 3 - 1));
  return PART;
}

/** Takes a reading of the tape in: the waist follows the fat part of what tissue changed since the start. */
function readTape(filter: RunningFilter, cm: number): void {
  const { bank, setup } = filter;
  if (Number.isNaN(setup.firstWaistCm)) return;
  const sight = tapeSight(setup.startFatKg, at(bank.mean, MASS) - setup.startMassKg);
  bankTape(bank, cm, sight.cmPerKg, setup.startMassKg, sight.variance);
}

/** The Forbes curve is not followed under so little fat, kg (common practice, no source). */
const LEAST_FAT_KG = 3;

/** Lives the day of a row: moves to the next morning. */
export function liveDay(filter: RunningFilter, table: DayTable, row: number): void {
  const { bank, setup, move } = filter;
  const fatKg = fatAfter(setup.startFatKg, at(bank.mean, MASS) - setup.startMassKg);
  move.kgPerKcal = kgPerSurplusKcal(Math.max(LEAST_FAT_KG, fatKg));
  move.energyKcal = at(table.energyKcal, row);
  move.massVar = move.kgPerKcal ** 2 * at(table.energyVar, row);
  linearise(bank.mean, 0, move);
  const searching = row >= filter.searchFrom;
  move.baseVar = searching ? setup.driftVar : setup.driftVar + stepShare(setup.search);
  bankPredict(bank, move, row + 1, searching);
}

function look(filter: RunningFilter, table: DayTable, row: number): void {
  const { sight } = filter;
  const week = (2 * Math.PI * (table.firstDay + row)) / 7;
  sight.knownWaterKg = at(table.knownWaterKg, row);
  sight.weekCos = Math.cos(week);
  sight.weekSin = Math.sin(week);
  sight.cycleCos = at(table.cycleCos, row);
  sight.cycleSin = at(table.cycleSin, row);
}

/** Steps older than this are history: what came after them has long told (common practice, no source). */
const SEARCH_DAYS = 250;

/** Variance that steps add a day when they are not looked for, (kcal/d)². */
export function stepShare(search: StepSearch): number {
  return search.hypotheses > 1 ? (search.chance * search.stepVar) / search.everyDays : 0;
}

/** Runs the filter over all rows; the filter then stands on the morning after the last. */
export function runFilter(
  setup: FilterSetup,
  table: DayTable,
): { filter: RunningFilter; track: FilterTrack } {
  const filter = openFilter(setup);
  const { size } = filter.bank;
  const { count } = table;
  filter.searchFrom = Math.max(0, count - SEARCH_DAYS);
  const track: FilterTrack = {
    size,
    means: new Float64Array(count * size),
    covs: new Float64Array(count * size * size),
    kgPerKcal: new Float64Array(count),
    weighIn: new Uint8Array(count),
  };
  for (let row = 0; row < count; row++) {
    track.weighIn[row] = readMorning(filter, table, row);
    track.means.set(filter.bank.mean, row * size);
    track.covs.set(filter.bank.cov, row * size * size);
    liveDay(filter, table, row);
    track.kgPerKcal[row] = filter.move.kgPerKcal;
  }
  bankMix(filter.bank);
  return { filter, track };
}

/** Log-likelihood of the rows from `first` to before `end`, for choosing noise levels and weighing shifts. */
export function logLikelihood(setup: FilterSetup, table: DayTable, first: number, end = table.count): number {
  const filter = openFilter(setup);
  for (let row = first; row < end; row++) {
    readMorning(filter, table, row);
    liveDay(filter, table, row);
  }
  return filter.bank.logLikelihood;
}
