import { type Bank, openBank, type StepSearch } from './bank.ts';
import type { NoiseLevels } from './noise.ts';
import {
  ADAPT,
  BASE,
  CYCLE_SIZE,
  DENSITY,
  MASS,
  PLAIN_SIZE,
  RESPONSE,
  type Sight,
  type Transition,
  WATER,
  WEEK_COS,
} from './state.ts';
import { FIRST_WAIST_SD } from './tape.ts';

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
