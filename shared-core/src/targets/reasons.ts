import { generalFactors } from '../foods/atwater.ts';
import { formatDecimal } from '../units/decimal.ts';
import { energyIn } from '../units/energy.ts';
import { formatBodyMass, formatGrams, formatRate } from '../units/mass.ts';
import { formatShare } from '../units/percent.ts';
import { bandFactors } from './carbohydrate.ts';
import { fatLimits } from './fat.ts';
import type { Figures } from './figures.ts';
import { leanInForceKg } from './lean-mass.ts';
import { contestRates, perMealRates, proteinRates } from './protein.ts';
import type { Reason } from './types.ts';

const practice = 'common practice, no source';

/** Why each number is what it is, with its source. */
export function reasonsFor(figures: Figures): Reason[] {
  return [
    protein(figures),
    perMeal(figures),
    band(figures),
    mark(figures),
    quick(figures),
    fat(figures),
    essential(figures),
    energy(figures),
    times(figures),
  ];
}

function protein(figures: Figures): Reason {
  const { numbers, athlete, aim } = figures;
  const { quotaG, gPerKg, evidenceLowG, evidenceHighG } = numbers.protein;
  const rate = formatRate(gPerKg, athlete.massUnit);
  const evidence = `The evidence supports ${formatGrams(evidenceLowG)} to ${formatGrams(evidenceHighG)}, ${formatRate([proteinRates.evidenceLow, proteinRates.evidenceHigh], athlete.massUnit)}`;
  const contest = aim.phase === 'pre-contest' ? contestRange(figures) : null;
  const highest = Math.max(evidenceHighG, contest?.highG ?? 0);
  const [rest, source] =
    quotaG > highest
      ? ['; more is practice, beyond the evidence.', practice]
      : quotaG < evidenceLowG
        ? ['; this is less.', 'your own records']
        : ['.', `Morton et al. 2018; Iraki et al. 2019${contest === null ? '' : '; Helms et al. 2014'}`];
  return {
    about: 'protein',
    text: `${formatBodyMass(numbers.bodyMassKg, athlete.massUnit)} in force × ${rate} = ${formatGrams(quotaG)}. ${evidence}${contest?.words ?? ''}${rest}`,
    source,
  };
}

/** What is advised before a contest, by lean mass, which at the set-up was measured or guessed. */
function contestRange(figures: Figures): { highG: number; words: string } {
  const leanKg = leanInForceKg(figures);
  const highG = contestRates.high * leanKg;
  const grams = `${formatGrams(contestRates.low * leanKg)} to ${formatGrams(highG)}`;
  const rate = formatRate([contestRates.low, contestRates.high], figures.athlete.massUnit);
  return { highG, words: `, and before a contest ${grams}, ${rate} of lean mass` };
}

function perMeal({ numbers, athlete }: Figures): Reason {
  const { quotaG, perMealMinimumG } = numbers.protein;
  const share = `${formatGrams(quotaG)} over ${athlete.meals} meals is ${formatGrams(quotaG / athlete.meals)} each`;
  const full = perMealMinimumG >= perMealRates.full * numbers.bodyMassKg;
  const least = perMealMinimumG >= perMealRates.least * numbers.bodyMassKg;
  if (!full && !least) {
    return {
      about: 'protein',
      text: `${share}, under every published meal amount.`,
      source: 'ISSN 2017 (Jäger et al.)',
    };
  }
  const rate = formatRate(full ? perMealRates.full : perMealRates.least, athlete.massUnit);
  return {
    about: 'protein',
    text: `${share}; a meal should reach at least ${formatGrams(perMealMinimumG)}, ${rate}.`,
    source: full ? 'Schoenfeld & Aragon 2018' : 'ISSN 2017 (Jäger et al.)',
  };
}

function band({ numbers }: Figures): Reason {
  const { bandLowG, bandHighG } = numbers.carbohydrate;
  return {
    about: 'carbohydrate',
    text: `The band is ${bandFactors.low} to ${bandFactors.high} times the protein quota: ${formatGrams(bandLowG)} to ${formatGrams(bandHighG)}.`,
    source: practice,
  };
}

function mark({ numbers, mark }: Figures): Reason {
  const grams = formatGrams(numbers.carbohydrate.markG);
  switch (mark.setBy) {
    case 'call':
      return {
        about: 'carbohydrate',
        text: `The mark of ${grams} was set by your last weekly call, which follows body mass and may leave the band.`,
        source: 'your own records',
      };
    case 'phase':
      return {
        about: 'carbohydrate',
        text: `The mark of ${grams} is the starting mark you gave this phase; the weekly call moves it.`,
        source: 'your own records',
      };
    case 'rule':
      return {
        about: 'carbohydrate',
        text: `The mark starts at ${grams}, ${bandFactors.start} times the protein quota; the weekly call moves it, further in the first weeks.`,
        source: practice,
      };
  }
}

function quick({ numbers, kind }: Figures): Reason {
  const { quickG } = numbers.carbohydrate;
  return {
    about: 'carbohydrate',
    text:
      kind === 'recovery' || quickG === 0
        ? 'Complex carbohydrate at every meal: quick carbohydrate belongs around a session.'
        : `${formatGrams(quickG)} of it may be quick, in the meals next to the session; complex elsewhere.`,
    source: practice,
  };
}

function fat({ numbers, athlete }: Figures): Reason {
  const { targetG, floorG, floorRule } = numbers.fat;
  const share = (generalFactors.fat * targetG) / numbers.energyKcal;
  const byMass = formatRate(fatLimits.gPerKg, athlete.massUnit);
  // Of a day with the fat of the floor, not of the target: the day's own energy has more.
  const byEnergy = `${formatShare(fatLimits.energyShare)} of the energy of a day with no more fat`;
  const limit =
    floorRule === 'g/kg'
      ? `${byMass}, the larger of that and ${byEnergy}`
      : `${byEnergy}, the larger of that and ${byMass}`;
  const usual =
    Math.round(100 * share) < 100 * fatLimits.usualShare
      ? `, under the usual 20 to 35 % (IOM 2005), which gave way to protein and carbohydrate`
      : '';
  return {
    about: 'fat',
    text: `The floor of ${formatGrams(floorG)} is ${limit}. The target of ${formatGrams(targetG)} is ${formatShare(share)} of energy${usual}.`,
    source: 'Iraki et al. 2019; Helms et al. 2014',
  };
}

function essential({ numbers }: Figures): Reason {
  const { linoleicG, alphaLinolenicG, epaDhaG } = numbers.fat;
  return {
    about: 'fat',
    text: `Part of it: ${linoleicG} g linoleic and ${alphaLinolenicG} g alpha-linolenic acid, ${epaDhaG} g EPA and DHA.`,
    source: 'IOM 2005, by sex and age; EFSA 2010',
  };
}

function energy({ athlete: { energyUnit } }: Figures): Reason {
  const factor = (kcal: number) =>
    `${formatDecimal(energyIn(kcal, energyUnit), energyUnit === 'kcal' ? 0 : 1)} ${energyUnit}`;
  return {
    about: 'energy',
    text: `Energy follows from the grams: ${factor(generalFactors.protein)} for each of protein and carbohydrate, ${factor(generalFactors.fat)} for each of fat.`,
    source: 'Atwater; Merrill & Watt 1973',
  };
}

function times({ kind, athlete }: Figures): Reason {
  return {
    about: 'meals',
    text:
      kind === 'session'
        ? `Training at ${athlete.trainingTime}: a full meal two to three hours before, a small one about an hour before where there is room, protein with quick carbohydrate after. The others are spread from waking to sleep.`
        : 'A recovery day: the meals are spread evenly from waking to sleep.',
    source: practice,
  };
}
