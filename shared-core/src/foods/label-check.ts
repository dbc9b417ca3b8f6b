import type { Nutrients } from '../records/nutrients.ts';
import { type EnergyUnit, formatEnergy, kcalFromKJ } from '../units/energy.ts';
import { roundTo } from '../units/round.ts';
import { energyKcal, generalFactors } from './atwater.ts';
import { accountedEnergy, type Labelled, leastMass } from './label-ranges.ts';
import type { Range } from './label-rounding.ts';
import { euFatTolerance, euGramsTolerance, US_TOLERANCE } from './label-tolerance.ts';

/** Sodium in 100 g of sodium chloride, mg: 22.990 of 58.443 (standard atomic weights), rounded up. */
const MOST_SODIUM_MG = 39_400;

export interface LabelCheck {
  /** `within tolerance`: rounding does not explain the difference, but labels may lawfully be off that far. */
  verdict: 'agrees' | 'within tolerance' | 'disagrees';
  /** What is off, by how much and what to check; empty when it agrees in every way. */
  words: string;
}

/**
 * Whether the declared energy of a food is what its protein, carbohydrate, fat, fibre and alcohol account for, once
 * rounding and the permitted methods are allowed for (label-ranges). Tolerances: 21 CFR 101.9(g) and the EU guidance of
 * December 2012, whichever allows more, because a food does not say where its label was printed.
 */
export function checkLabel(food: Labelled, energyUnit: EnergyUnit): LabelCheck {
  const impossible = partsBeyondWholes(food.per100) || massBeyondWhole(leastMass(food));
  if (impossible) return { verdict: 'disagrees', words: impossible };

  const declared = food.per100.energyKcal;
  const accounted = accountedEnergy(food);
  if (declared >= accounted.low && declared <= accounted.high)
    return { verdict: 'agrees', words: fibreLeftOut(food) };

  const difference = say(declared, accounted, energyUnit);
  if (tolerated(food.per100, accounted)) {
    return { verdict: 'within tolerance', words: `${difference} Labels may be off that far.` };
  }
  return { verdict: 'disagrees', words: `${difference} ${advice(declared, accounted, energyUnit)}` };
}

/** Said where the energy is more than carbohydrate with its fibre inside can account for. */
function fibreLeftOut(food: Labelled): string {
  const { fibreG = 0, ...per100 } = food.per100;
  if (per100.energyKcal <= accountedEnergy({ ...food, per100 }).high) return '';
  const whole = roundTo(per100.carbohydrateG + fibreG, 0.1);
  return `The energy adds up only with fibre beside the carbohydrate. Carbohydrate here includes it: ${whole} g per 100 g.`;
}

function tolerated(per100: Nutrients, { low, high }: Range): boolean {
  const declared = per100.energyKcal;
  if (low <= US_TOLERANCE * declared && declared <= US_TOLERANCE * high) return true;
  const slack = energyKcal({
    proteinG: euGramsTolerance(per100.proteinG),
    carbohydrateG: euGramsTolerance(per100.carbohydrateG),
    fatG: euFatTolerance(per100.fatG),
  });
  return declared >= low - slack && declared <= high + slack;
}

function partsBeyondWholes(per100: Nutrients): string {
  const { proteinG, carbohydrateG, fatG, fibreG = 0, sugarsG = 0, saturatesG = 0 } = per100;
  const { linoleicG = 0, alphaLinolenicG = 0, epaDhaG = 0, leucineG = 0, sodiumMg = 0 } = per100;
  if (fibreG > carbohydrateG + euGramsTolerance(carbohydrateG)) {
    return 'Fibre is more than the carbohydrate. Carbohydrate here includes fibre: if the label’s does not, add the fibre to it.';
  }
  if (sugarsG > carbohydrateG + euGramsTolerance(carbohydrateG)) {
    return 'Sugars are more than the carbohydrate they are part of.';
  }
  const mostFat = fatG + euFatTolerance(fatG);
  if (saturatesG > mostFat) return 'Saturates are more than the fat they are part of.';
  if (linoleicG + alphaLinolenicG + epaDhaG > mostFat) {
    return 'The fatty acids are more than the fat they are part of. Check whether the label has them in mg.';
  }
  if (leucineG > proteinG + euGramsTolerance(proteinG))
    return 'Leucine is more than the protein it is part of.';
  if (sodiumMg > MOST_SODIUM_MG)
    return 'Sodium is more than in salt itself. Check whether the label has it in mg.';
  return '';
}

function massBeyondWhole(grams: number): string {
  if (grams <= 100) return '';
  return `Protein, carbohydrate and fat add up to ${Math.round(grams)} g in 100 g. Check which serving the figures are for.`;
}

function say(declared: number, { low, high }: Range, unit: EnergyUnit): string {
  const more = declared > high;
  const off = `${formatEnergy(more ? declared - high : low - declared, unit)} ${more ? 'more' : 'less'}`;
  const range = `${formatEnergy(low, unit)} to ${formatEnergy(high, unit)}`;
  return `Declared ${formatEnergy(declared, unit)} per 100 g, ${off} than protein, carbohydrate and fat account for (${range}).`;
}

function advice(declared: number, { low, high }: Range, unit: EnergyUnit): string {
  if (declared < low)
    return `Check the grams; polyols count only ${unit === 'kcal' ? '2.4 kcal' : '10 kJ'} a gram, and fibre less than carbohydrate.`;
  const asKJ = kcalFromKJ(declared);
  if (asKJ >= low && asKJ <= high)
    return `It looks like kJ: ${Math.round(declared)} kJ are ${formatEnergy(asKJ, unit)}.`;
  const gap = declared - high;
  const fat = Math.ceil(gap / generalFactors.fat);
  const carbohydrate = Math.ceil(gap / generalFactors.carbohydrate);
  return `Check the grams: ${fat} g of fat or ${carbohydrate} g of carbohydrate would make the difference.`;
}
