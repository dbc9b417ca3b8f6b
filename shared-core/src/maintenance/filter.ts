import { at } from '../trend/reading.ts';
import {
  type Bank,
  bankCorrect,
  bankExpect,
  bankLoosen,
  bankMix,
  bankPredict,
  bankTape,
  openBank,
  type StepSearch,
} from './bank.ts';
import { type DayTable, has } from './days.ts';
import { fatAfter, kgPerSurplusKcal } from './energy-density.ts';
import type { NoiseLevels } from './noise.ts';
import {
  ADAPT,
  BASE,
  CYCLE_SIZE,
  DENSITY,
  linearise,
  MASS,
  PLAIN_SIZE,
  RESPONSE,
  type Sight,
  type Transition,
  WATER,
  WEEK_COS,
} from './state.ts';
import { FIRST_WAIST_SD, tapeSight } from './tape.ts';

/** Where the filter starts and how the body is taken to behave. */
export interface FilterSetup {
  startMassKg: number;
  startFatKg: number;
  maintenance: { kcal: number; sd: number };
  /** How much more tissue a kcal of this log is expected to move than one that was eaten: above 1 when food goes unlogged. */
  surplusEffect: number;
  noise: NoiseLevels;
  search: StepSearch;
  /** Slow drift of maintenance, variance a day, (kcal/d)². */
  driftVar: number;
  cycle: boolean;
  /** Whether the scale's zero moved on some morning. */
  zeroMoves: boolean;
  /** First reading of the tape, cm; NaN without one. */
  firstWaistCm: number;
}

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

/** The filter between two days: hand it the rows in order. */
export interface RunningFilter {
  bank: Bank;
  setup: FilterSetup;
  move: Transition;
  sight: Sight;
  /** Row from which steps are looked for one by one; before it their chance is spread over the days. */
  searchFrom: number;
  expectation: Float64Array;
}

/**
 * Rise of maintenance with tissue, kcal/d per kg: upkeep of tissue and movement of
 * the linearised model of Hall KD, Chow CC. Am J Clin Nutr 2011;94:66–74, at an activity level of 1.8 (second-hand).
 */
export const keepPerKg = 27;
/** Spread of the first tissue, share of body mass, and of the water of the days before, kg (common practice, no source). */
const START_TISSUE_SD = 0.012;
const START_WATER_SD = 0.5;
/** Response to known water, as a share of the formula (common practice, no source). */
export const RESPONSE_START = { mean: 0.95, sd: 0.3 };
/** People differ from the Forbes curve (5,000 to 7,700 kcal/kg by fat mass, Hall 2008), and logs run short (common practice, no source). */
const DENSITY_SD = 0.14;
/**
 * A log that runs short lowers maintenance in its own units and raises what its kcal move: the start errs in both at once
 * (correlation, common practice, no source).
 */
const SHORT_LOG = -0.4;
/** Height of the rhythms, share of body mass; adaptation, kcal/d (common practice, no source). */
const RHYTHM_SD = 0.0016;
const CYCLE_SD = 0.004;
const ADAPT_SD = 60;

/** Opens a filter on the morning of the first row. */
export function openFilter(setup: FilterSetup): RunningFilter {
  const plainSize = setup.cycle ? CYCLE_SIZE : PLAIN_SIZE;
  const withZero = setup.zeroMoves ? plainSize + 1 : plainSize;
  const size = Number.isNaN(setup.firstWaistCm) ? withZero : withZero + 1;
  const mean = new Float64Array(size);
  const cov = new Float64Array(size * size);
  const set = (state: number, value: number, sd: number) => {
    mean[state] = value;
    cov[state * (size + 1)] = sd * sd;
  };
  const { noise } = setup;
  set(MASS, setup.startMassKg, START_TISSUE_SD * setup.startMassKg);
  set(BASE, setup.maintenance.kcal, setup.maintenance.sd);
  set(ADAPT, 0, ADAPT_SD);
  set(WATER, 0, Math.hypot(noise.waterSd, START_WATER_SD));
  set(RESPONSE, RESPONSE_START.mean, RESPONSE_START.sd);
  set(DENSITY, setup.surplusEffect - 1, DENSITY_SD);
  const together = SHORT_LOG * setup.maintenance.sd * DENSITY_SD;
  cov[BASE * size + DENSITY] = together;
  cov[DENSITY * size + BASE] = together;
  for (let state = WEEK_COS; state < plainSize; state++)
    set(state, 0, (state < PLAIN_SIZE ? RHYTHM_SD : CYCLE_SD) * setup.startMassKg);
  if (size > withZero) set(withZero, setup.firstWaistCm, FIRST_WAIST_SD);
  return {
    bank: openBank(mean, cov, setup.search),
    setup,
    move: {
      energyKcal: 0,
      kgPerKcal: 0,
      keepPerKg,
      referenceKg: setup.startMassKg,
      waterCarry: noise.waterCarry,
      loadKg: 0,
      pullKg: 0,
      massVar: 0,
      baseVar: setup.driftVar,
      waterVar: noise.waterSd ** 2 * (1 - noise.waterCarry ** 2),
    },
    sight: {
      ...{ knownWaterKg: 0, weekCos: 0, weekSin: 0, cycleCos: 0, cycleSin: 0 },
      zero: setup.zeroMoves ? plainSize : -1,
    },
    searchFrom: 0,
    expectation: new Float64Array(2),
  };
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
