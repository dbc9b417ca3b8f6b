import type { Aim } from '../call/input.ts';
import type { KindOfDay } from '../season/kind-of-day.ts';
import type { DayTargets, PlannedMeal } from '../targets/types.ts';
import type { Units } from '../units/reader.ts';

/** A gauge of one macronutrient on one day, in grams; all numbers it shows are also said in `words`. */
export interface BeamView {
  name: 'Protein' | 'Carbohydrate' | 'Fat';
  eatenG: number;
  /** Right end of the beam. */
  spanG: number;
  /** Protein: the cumulated quota of each meal. */
  notches: readonly { atG: number; label: string; reached: boolean }[];
  /** Carbohydrate: the band. */
  bracket: { lowG: number; highG: number } | null;
  /** What to reach: quota, mark or target. */
  pointer: { atG: number; label: string };
  /** Fat: the floor. */
  post: { atG: number; label: string } | null;
  words: string;
}

export interface Macros {
  energyKcal: number;
  proteinG: number;
  carbohydrateG: number;
  fatG: number;
}

export interface EntryView extends Macros {
  id: string;
  food: string;
  name: string;
  grams: number;
  /** `2 large`, when it was typed so. */
  amount: string | null;
}

export interface MealView extends PlannedMeal {
  entries: readonly EntryView[];
  eaten: Macros;
  /** What is left for this meal once what earlier meals over- or undershot is shared out; never negative. */
  left: { proteinG: number; carbohydrateG: number; fatG: number };
}

export interface DayView {
  athlete: string;
  date: string;
  units: Units;
  kindOfDay: KindOfDay;
  phase: Aim['phase'];
  targets: DayTargets;
  /** Sums of the day; `partly` names nutrients that some entries do not report. */
  eaten: Macros & {
    fibreG: number;
    sugarsG: number;
    linoleicG: number;
    alphaLinolenicG: number;
    epaDhaG: number;
    leucineG: number;
    sodiumMg: number;
    partly: readonly string[];
  };
  beams: { protein: BeamView; carbohydrate: BeamView; fat: BeamView };
  meals: readonly MealView[];
  /** Number of the meal to log next, by time and what is logged. */
  nextMeal: number;
  complete: boolean | null;
  cautions: readonly string[];
}
