import type { Decision } from './decide.ts';
import type { NextLever } from './output.ts';
import type { Situation } from './situation.ts';
import { grams, kcal, percent } from './texts.ts';

/** Protein that the evidence supports at the high end, g per kg: Morton RW et al. Br J Sports Med 2018;52:376–384 (CI to 2.2). */
const PROTEIN_EVIDENCE_G_PER_KG = 2.2;
/** Brisk walking, 4.3 times rest: Ainsworth BE et al. Med Sci Sports Exerc 2011;43:1575–1581; net of rest. */
const WALKING_NET_MET = 3.3;

/** What is left when the mark stands at its floor, in order; empty when it does not or the aim is met. */
export function nextLevers(situation: Situation, decision: Decision): NextLever[] {
  const { dose, guards, input, model } = situation;
  if (decision.markG > guards.floorG + 5) return [];
  const short = 4 * (guards.floorG - dose.markFor(guards.aim));
  if (short < 40) return [];
  const massKg = model.tissueKg.mean;
  const { targets } = input;
  const levers: NextLever[] = [];
  // Food may only be cut down to the guard of energy availability.
  const room = Math.max(0, 4 * (decision.markG - guards.availabilityFloorG));
  const fat = Math.min(9 * Math.max(0, targets.fatG - targets.fatFloorG), room);
  if (fat >= 20)
    levers.push({
      code: 'fat',
      text: `Fat from ${grams(targets.fatG)} to ${grams(targets.fatG - fat / 9)} (${fat / 9 >= targets.fatG - targets.fatFloorG - 0.5 ? 'its floor' : 'as far as energy availability allows'}): ${kcal(fat)} a day.`,
      kcalPerDay: fat,
      numbers: { fromG: targets.fatG, toG: targets.fatG - fat / 9 },
    });
  const proteinTo = PROTEIN_EVIDENCE_G_PER_KG * massKg;
  const protein = Math.min(4 * Math.max(0, targets.proteinG - proteinTo), room - fat);
  if (protein >= 20)
    levers.push({
      code: 'protein',
      text: `Protein from ${grams(targets.proteinG)} towards ${grams(targets.proteinG - protein / 4)} (for muscle the evidence reaches to 2.2 g/kg; in a loss keep 2.3 g per kg of lean mass): ${kcal(protein)} a day.`,
      kcalPerDay: protein,
      numbers: { fromG: targets.proteinG, toG: targets.proteinG - protein / 4 },
    });
  const perMinute = (WALKING_NET_MET * 3.5 * massKg) / 200;
  const minutes = Math.min(60, Math.ceil(short / perMinute / 5) * 5);
  levers.push({
    code: 'cardio',
    text: `${minutes} minutes of brisk walking a day: about ${kcal(minutes * perMinute)}.`,
    kcalPerDay: minutes * perMinute,
    numbers: { minutesPerDay: minutes },
  });
  const slower = dose.paceAt(decision.markG).mean;
  const ratio = slower < 0 ? guards.aim / slower : Number.POSITIVE_INFINITY;
  levers.push({
    code: 'pace',
    text: `A slower pace: ${percent(slower)} a week is what this mark gives, in place of ${percent(guards.aim)}.`,
    kcalPerDay: short,
    numbers: { percentPerWeek: slower, aimPercentPerWeek: guards.aim },
  });
  levers.push({
    code: 'date',
    text:
      ratio < 20
        ? `A later date: the same loss takes ${ratio.toFixed(1)} times as long at this mark.`
        : 'A later date: at this mark there is hardly any loss, so a date does not help by itself.',
    kcalPerDay: short,
    numbers: { timesAsLong: Math.min(ratio, 99) },
  });
  return levers;
}
