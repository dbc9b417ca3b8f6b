/** Why a number is what it is, with where the rule comes from (`common practice, no source` for a rule of thumb). */
export interface Reason {
  about: 'protein' | 'carbohydrate' | 'fat' | 'energy' | 'meals';
  text: string;
  source: string;
}

/** What a day asks for. Grams a day unless a name says otherwise. */
export interface DayTargets {
  bodyMassKg: number;
  protein: {
    quotaG: number;
    gPerKg: number;
    /** What the evidence supports: 1.6 to 2.2 g/kg. */
    evidenceLowG: number;
    evidenceHighG: number;
    /** What each meal should reach at the least, g. */
    perMealMinimumG: number;
  };
  carbohydrate: {
    bandLowG: number;
    bandHighG: number;
    markG: number;
    /** Share of the mark that may be quick, around training; 0 on recovery days. */
    quickG: number;
  };
  fat: {
    targetG: number;
    floorG: number;
    /** Which limit sets the floor. */
    floorRule: 'g/kg' | '% of energy';
    linoleicG: number;
    alphaLinolenicG: number;
    epaDhaG: number;
  };
  energyKcal: number;
  meals: readonly PlannedMeal[];
  /** One sentence for each rule that gave way to another, empty when all hold. */
  gaveWay: readonly string[];
  cautions: readonly string[];
  reasons: readonly Reason[];
}

export interface PlannedMeal {
  /** 1 … N. */
  meal: number;
  /** `HH:MM`, the athlete's zone. */
  time: string;
  role: 'meal' | 'before training' | 'small, before training' | 'after training';
  proteinG: number;
  carbohydrateG: number;
  quickG: number;
  fatG: number;
}
