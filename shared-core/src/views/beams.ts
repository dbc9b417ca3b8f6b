import type { DayTargets } from '../targets/types.ts';
import { formatDecimal } from '../units/decimal.ts';
import type { BeamView, Macros } from './types.ts';

/** Part of a beam beyond what it is measured against, so that a little too much still shows. */
const OVERHANG = 1.1;
/** A notch counts as reached when less than half a gram is missing, which no screen shows. */
const ROUNDING_G = 0.5;

/** Protein as a beam with a notch at each meal's cumulated quota; `meals` are what each meal had, in order. */
export function proteinBeam(targets: DayTargets, eatenG: number, meals: readonly Macros[]): BeamView {
  let quota = 0;
  let eaten = 0;
  const notches = targets.meals.map(({ meal, proteinG }, i) => {
    quota += proteinG;
    eaten += meals[i]?.proteinG ?? 0;
    return { atG: quota, label: String(meal), reached: eaten >= quota - ROUNDING_G };
  });
  const { quotaG } = targets.protein;
  const latest = meals.findLastIndex((meal) => meal.energyKcal > 0);
  const short = notches.filter((notch, i) => i <= latest && !notch.reached);
  const reached = `${notches.filter((notch) => notch.reached).length} of ${notches.length} notches reached.`;
  const behind =
    short.length === 0 ? '' : ` Short of its notch: ${short.map(({ label }) => `meal ${label}`).join(', ')}.`;
  return {
    name: 'Protein',
    eatenG,
    spanG: OVERHANG * quotaG,
    notches,
    bracket: null,
    pointer: { atG: quotaG, label: 'quota' },
    post: null,
    words: `${ofAim('Protein', eatenG, quotaG, 'quota')} ${reached}${behind}`,
  };
}

/** Carbohydrate as a beam with the band as a bracket and a pointer at the mark. */
export function carbohydrateBeam(targets: DayTargets, eatenG: number): BeamView {
  const { bandLowG, bandHighG, markG } = targets.carbohydrate;
  const band = `The band is ${formatDecimal(bandLowG)} to ${formatDecimal(bandHighG)} g.`;
  return {
    name: 'Carbohydrate',
    eatenG,
    spanG: OVERHANG * Math.max(bandHighG, markG),
    notches: [],
    bracket: { lowG: bandLowG, highG: bandHighG },
    pointer: { atG: markG, label: 'mark' },
    post: null,
    words: `${ofAim('Carbohydrate', eatenG, markG, 'mark')} ${band}`,
  };
}

/** Fat as a beam with a post at the floor. */
export function fatBeam(targets: DayTargets, eatenG: number): BeamView {
  const { targetG, floorG } = targets.fat;
  const floor = `The floor of ${formatDecimal(floorG)} g is ${eatenG >= floorG ? 'reached' : 'not reached yet'}.`;
  return {
    name: 'Fat',
    eatenG,
    spanG: OVERHANG * Math.max(1.25 * targetG, floorG),
    notches: [],
    bracket: null,
    pointer: { atG: targetG, label: 'target' },
    post: { atG: floorG, label: 'floor' },
    words: `${ofAim('Fat', eatenG, targetG, 'target')} ${floor}`,
  };
}

function ofAim(name: BeamView['name'], eatenG: number, aimG: number, aim: string): string {
  const difference = Math.round(aimG) - Math.round(eatenG);
  const rest =
    difference === 0
      ? 'none left'
      : `${formatDecimal(Math.abs(difference))} g ${difference > 0 ? 'left' : 'over'}`;
  return `${name}: ${formatDecimal(eatenG)} g eaten of the ${aim} of ${formatDecimal(aimG)} g, ${rest}.`;
}
