import { generalFactors } from '../foods/atwater.ts';
import { expectedEnergy } from '../maintenance/expected-energy.ts';
import { formatDecimal } from '../units/decimal.ts';
import { formatEnergy, formatEstimatedEnergy } from '../units/energy.ts';
import { formatGrams, formatRate } from '../units/mass.ts';
import { formatShare } from '../units/percent.ts';
import { roundTo } from '../units/round.ts';
import { fatLimits } from './fat.ts';
import type { Figures } from './figures.ts';
import { personOn } from './person.ts';
import { perMealRates } from './protein.ts';

/** Highest share of energy from protein that is usual in health: AMDR, IOM 2005, 10 to 35 %. */
const usualProteinShare = 0.35;
/** Carbohydrate that the brain uses in a day: RDA, IOM 2005. */
const carbohydrateRdaG = 130;

/** One sentence for each rule that could not hold beside another: which one gave way, to what, with the numbers. */
export function gaveWay(figures: Figures): string[] {
  return [
    perMeal(figures),
    fatRate(figures),
    fatFloor(figures),
    band(figures),
    energy(figures),
    proteinShare(figures),
    carbohydrateNeed(figures),
  ].filter((sentence) => sentence !== null);
}

/** A share that broke a limit, to a tenth of a per cent and away from it: in whole ones it would read as if it kept it. */
function brokenShare(share: number, away: (tenths: number) => number): string {
  return `${formatDecimal(away(1000 * share) / 10, 1)} %`;
}

function perMeal({ numbers, athlete }: Figures): string | null {
  const { quotaG, perMealMinimumG } = numbers.protein;
  const full = perMealRates.full * numbers.bodyMassKg;
  if (perMealMinimumG >= full) return null;
  const meals = Math.max(1, Math.floor(quotaG / full));
  return (
    `The meal minimum of ${formatGrams(full)}, ${formatRate(perMealRates.full, athlete.massUnit)}, gave way to the protein quota: ` +
    `${formatGrams(quotaG)} over ${athlete.meals} meals is ${formatGrams(quotaG / athlete.meals)} each; it pays for ${meals} such meals.`
  );
}

function fatRate({ numbers, athlete }: Figures): string | null {
  if (athlete.fatGPerKg >= fatLimits.gPerKg) return null;
  return (
    `The fat rate of ${formatRate(athlete.fatGPerKg, athlete.massUnit)} gave way to the least by body mass, ` +
    `${formatRate(fatLimits.gPerKg, athlete.massUnit)}: ${formatGrams(numbers.fat.targetG)}.`
  );
}

/** Lifted silently, fat would add energy that the weekly call did not reckon with when it moved the mark. */
function fatFloor({ numbers, athlete }: Figures): string | null {
  const { targetG, floorG } = numbers.fat;
  if (targetG >= floorG) return null;
  const share = (generalFactors.fat * targetG) / numbers.energyKcal;
  // Rounded up, or the rate would miss the floor again.
  const rate = Math.ceil((100 * floorG) / numbers.bodyMassKg) / 100;
  return (
    `The fat floor of ${formatGrams(floorG)} (${formatShare(fatLimits.energyShare)} of energy) gave way to the fat target of ` +
    `${formatGrams(targetG)}, which is ${brokenShare(share, Math.floor)}: fat follows body mass, so that a move of the mark moves no fat. ` +
    `A fat rate of ${formatRate(rate, athlete.massUnit)} would reach the floor.`
  );
}

function band({ numbers, mark }: Figures): string | null {
  const { bandLowG, bandHighG, markG } = numbers.carbohydrate;
  if (markG >= bandLowG && markG <= bandHighG) return null;
  const side = markG < bandLowG ? 'below' : 'above';
  const setBy = mark.setBy === 'call' ? 'the weekly call set it' : 'it is the starting mark of the phase';
  return (
    `The carbohydrate band of ${formatGrams(bandLowG)} to ${formatGrams(bandHighG)} gave way to the mark of ` +
    `${formatGrams(markG)}, ${side} it: ${setBy}, and body mass counts more than the rule of the band.`
  );
}

/** Once a weekly call was decided the athlete's own data have answered this, so it is only said before. */
function energy({ numbers, mark, athlete, aim, date }: Figures): string | null {
  if (mark.setBy === 'call') return null;
  const person = personOn(athlete, date);
  const expected = expectedEnergy(person, numbers.bodyMassKg, aim.pacePercentPerWeek);
  if (numbers.energyKcal >= expected.lowKcal && numbers.energyKcal <= expected.highKcal) return null;
  const say = (kcal: number) => formatEstimatedEnergy(kcal, athlete.energyUnit);
  const side = numbers.energyKcal < expected.lowKcal ? 'under' : 'over';
  const rest =
    expected.kcal -
    generalFactors.protein * numbers.protein.quotaG -
    generalFactors.fat * numbers.fat.targetG;
  const nearer = roundTo(rest / generalFactors.carbohydrate, 5);
  const advice =
    nearer > 0
      ? `A starting mark of about ${formatGrams(nearer)} would be nearer.`
      : 'Protein and fat alone come to more; a lower protein rate would be nearer.';
  return (
    `The energy estimate gave way to the carbohydrate mark: the day has ${formatEnergy(numbers.energyKcal, athlete.energyUnit)}, ${side} the ` +
    `${say(expected.lowKcal)} to ${say(expected.highKcal)} that equations expect for this aim. They are a guess until ` +
    `there are weigh-ins, and the weekly call corrects the mark. ${advice}`
  );
}

function proteinShare({ numbers }: Figures): string | null {
  const share = (generalFactors.protein * numbers.protein.quotaG) / numbers.energyKcal;
  if (share <= usualProteinShare) return null;
  return (
    `The usual limit of ${formatShare(usualProteinShare)} of energy from protein gave way to the protein quota: ` +
    `${formatGrams(numbers.protein.quotaG)} is ${brokenShare(share, Math.ceil)}.`
  );
}

function carbohydrateNeed({ numbers }: Figures): string | null {
  const { markG } = numbers.carbohydrate;
  if (markG >= carbohydrateRdaG) return null;
  return `The ${formatGrams(carbohydrateRdaG)} of carbohydrate recommended for a day (IOM 2005) gave way to the mark of ${formatGrams(markG)}.`;
}
