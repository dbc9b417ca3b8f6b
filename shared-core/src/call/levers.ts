import { formatGrams } from '../units/mass.ts';
import { formatEstimatedPace, formatPace } from '../units/percent.ts';
import { type Decision, SMALLEST_G } from './decide.ts';
import type { NextLever } from './output.ts';
import type { Situation } from './situation.ts';
import type { Say } from './texts.ts';

/** Protein that the evidence supports at the high end, g per kg: Morton RW et al. Br J Sports Med 2018;52:376–384 (CI to 2.2). */
const PROTEIN_EVIDENCE_G_PER_KG = 2.2;
/** Protein in a loss, g per kg of lean mass, low end: Helms ER et al. J Int Soc Sports Nutr 2014;11:20, 2.3 to 3.1. */
const LOSS_PROTEIN_G_PER_LEAN_KG = 2.3;
/** Brisk walking, 4.3 times rest: Ainsworth BE et al. Med Sci Sports Exerc 2011;43:1575–1581; net of rest. */
const WALKING_NET_MET = 3.3;

/** From this mark down other levers are worth more than the last carbohydrate, g a day (common practice, no source). */
const LOW_MARK_G = 50;
/** Less is no lever, kcal a day, and missing less needs none; longest walk, minutes (common practice, no source). */
const LEAST_KCAL = { lever: 20, missing: 40 };
const MOST_WALKING = 60;

/** What is left when the mark stands low or at its floor, in order; empty when it does not or the aim is met. */
export function nextLevers(situation: Situation, decision: Decision, say: Say): NextLever[] {
  const { dose, guards, input, model } = situation;
  const lowG = Math.max(guards.floorG, LOW_MARK_G);
  if (decision.markG > lowG + SMALLEST_G) return [];
  const short = 4 * (Math.max(decision.markG, lowG) - dose.markFor(guards.aim));
  const pace = dose.paceAt(decision.markG).mean;
  const losing = guards.aim < 0;
  // A mark on its way up to the guard may still do more than the aim asks.
  if (short < LEAST_KCAL.missing || (decision.markG < guards.floorG && pace <= guards.aim)) return [];
  const massKg = model.tissueKg.mean;
  const { targets } = input;
  const levers: NextLever[] = [];
  // Food may only be cut down to the guard of energy availability.
  const room = Math.max(0, 4 * (decision.markG - guards.availabilityFloorG));
  const fat = Math.min(9 * Math.max(0, targets.fatG - targets.fatFloorG), room);
  if (fat >= LEAST_KCAL.lever)
    levers.push({
      code: 'fat',
      text: `Fat from ${formatGrams(targets.fatG)} to ${formatGrams(targets.fatG - fat / 9)} (${fat / 9 >= targets.fatG - targets.fatFloorG - 0.5 ? 'its floor' : 'as far as energy availability allows'}): ${say.energy(fat)} a day.`,
      kcalPerDay: fat,
      numbers: { fromG: targets.fatG, toG: targets.fatG - fat / 9 },
    });
  const proteinTo = PROTEIN_EVIDENCE_G_PER_KG * massKg;
  const protein = Math.min(4 * Math.max(0, targets.proteinG - proteinTo), room - fat);
  if (protein >= LEAST_KCAL.lever)
    levers.push({
      code: 'protein',
      text: `Protein from ${formatGrams(targets.proteinG)} towards ${formatGrams(targets.proteinG - protein / 4)}: ${say.energy(protein)} a day. For muscle the evidence reaches to ${say.rate(PROTEIN_EVIDENCE_G_PER_KG)}; in a loss keep ${say.rate(LOSS_PROTEIN_G_PER_LEAN_KG)} of lean mass.`,
      kcalPerDay: protein,
      numbers: { fromG: targets.proteinG, toG: targets.proteinG - protein / 4 },
    });
  // What cardio burns is as little there for the body as what was not eaten.
  const perMinute = (WALKING_NET_MET * 3.5 * massKg) / 200;
  const upTo = (kcal: number) => Math.floor(kcal / perMinute / 5) * 5;
  const beside = upTo(room - fat - protein);
  const instead = beside < 5 && upTo(room) >= 5;
  const minutes = Math.min(MOST_WALKING, Math.ceil(short / perMinute / 5) * 5, instead ? upTo(room) : beside);
  if (minutes >= 5)
    levers.push({
      code: 'cardio',
      text: `${instead ? 'In place of cutting food: ' : ''}${minutes} minutes of brisk walking a day: about ${say.energy(minutes * perMinute)}.`,
      kcalPerDay: minutes * perMinute,
      numbers: { minutesPerDay: minutes },
    });
  if (decision.markG > guards.floorG + SMALLEST_G) return levers;
  const ratio = pace < 0 ? guards.aim / pace : Number.POSITIVE_INFINITY;
  levers.push({
    code: 'pace',
    text: `${losing && pace < 0 ? 'A slower pace' : 'Another aim'}: ${formatEstimatedPace(pace)} a week is what this mark gives, in place of ${formatPace(guards.aim)}.`,
    kcalPerDay: short,
    numbers: { percentPerWeek: pace, aimPercentPerWeek: guards.aim },
  });
  if (!losing) return levers;
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
