/**
 * The published adult dynamic model of body mass. Hall KD, Sacks G, Chandramohan D et al. "Quantification of the
 * effect of energy imbalance on bodyweight." Lancet 2011;378:826–837 and its web-appendix. Energies in MJ, masses in kg.
 * It shares no code with the model it is there to judge.
 */
const FAT_MJ_PER_KG = 39.5;
const LEAN_MJ_PER_KG = 7.6;
const GLYCOGEN_MJ_PER_KG = 17.6;
const WATER_PER_GLYCOGEN = 2.7;
const FORBES_KG = 10.4;
const SODIUM_MG_PER_L = 3220;
const SODIUM_CLEARANCE = 3000;
const SODIUM_FROM_CARBOHYDRATE = 4000;
const FOOD_EFFECT = 0.1;
const ADAPTATION_DAYS = 14;
const FAT_UPKEEP = 0.013;
const LEAN_UPKEEP = 0.092;
const FAT_TURNOVER = 0.75;
const LEAN_TURNOVER = 0.96;
const GLYCOGEN_START_KG = 0.5;
const EXTRACELLULAR_SHARE = 0.235;
export const KCAL_PER_MJ = 1000 / 4.184;

export interface PlantBuild {
  massKg: number;
  fatKg: number;
  restingMj: number;
  activityLevel: number;
  /** Share of the habitual energy that comes from carbohydrate, 0…1. */
  carbohydrateShare: number;
  /** Hidden spread between people; 1 and 0 are the published model. */
  spread: {
    /** Times the Forbes constant of 10.4 kg. */
    forbes: number;
    /** Adds to the lean share of energy in surplus, takes from it in deficit: training and protein. */
    training: number;
    /** Adaptive thermogenesis per unit of energy change, 0.14 in the paper. */
    adaptation: number;
    /** Times glycogen store and extracellular response. */
    water: number;
  };
}

export const PUBLISHED_SPREAD = { forbes: 1, training: 0, adaptation: 0.14, water: 1 } as const;

export interface Plant {
  build: PlantBuild;
  habitualMj: number;
  habitualCarbohydrateMj: number;
  activityMjPerKg: number;
  fixedMj: number;
  glycogenStartKg: number;
  glycogenLoss: number;
  extracellularStartKg: number;
}

export interface Body {
  fatKg: number;
  leanKg: number;
  glycogenKg: number;
  extracellularKg: number;
  adaptationMj: number;
}

export interface DayFood {
  energyMj: number;
  carbohydrateMj: number;
  /** Sodium above the habitual, mg. */
  sodiumMg: number;
  /** Unforeseen change of expenditure from the habitual, MJ/d. */
  shiftMj: number;
}

/** Balances the model on the habitual diet at day 0. */
export function growPlant(build: PlantBuild): { plant: Plant; body: Body } {
  const habitualMj = build.activityLevel * build.restingMj;
  const habitualCarbohydrateMj = build.carbohydrateShare * habitualMj;
  const activityMjPerKg = (((1 - FOOD_EFFECT) * build.activityLevel - 1) * build.restingMj) / build.massKg;
  const glycogenStartKg = GLYCOGEN_START_KG * build.spread.water;
  const extracellularStartKg = EXTRACELLULAR_SHARE * build.massKg;
  const leanKg =
    build.massKg - build.fatKg - glycogenStartKg * (1 + WATER_PER_GLYCOGEN) - extracellularStartKg;
  const fixedMj =
    habitualMj - FAT_UPKEEP * build.fatKg - LEAN_UPKEEP * leanKg - activityMjPerKg * build.massKg;
  return {
    plant: {
      build,
      habitualMj,
      habitualCarbohydrateMj,
      activityMjPerKg,
      fixedMj,
      glycogenStartKg,
      glycogenLoss: habitualCarbohydrateMj / glycogenStartKg ** 2,
      extracellularStartKg,
    },
    body: {
      fatKg: build.fatKg,
      leanKg,
      glycogenKg: glycogenStartKg,
      extracellularKg: extracellularStartKg,
      adaptationMj: 0,
    },
  };
}

/** Mass on a perfect scale, kg. */
export function massOf(body: Body): number {
  return body.fatKg + body.leanKg + body.glycogenKg * (1 + WATER_PER_GLYCOGEN) + body.extracellularKg;
}

/** Mass without glycogen, its water and the extracellular fluid, kg: what pace is judged on. */
export function tissueOf(body: Body): number {
  return body.fatKg + body.leanKg;
}

/** Share of the energy of tissue change that goes to lean tissue, 0…1. */
function leanEnergyShare(plant: Plant, fatKg: number, surplusMj: number): number {
  const c = (FORBES_KG * plant.build.spread.forbes * LEAN_MJ_PER_KG) / FAT_MJ_PER_KG;
  const share = c / (c + fatKg) + Math.sign(surplusMj) * plant.build.spread.training;
  return Math.min(0.6, Math.max(0.01, share));
}

/** Turnover cost per MJ stored at this lean share. */
function turnover(share: number): number {
  return (share * LEAN_TURNOVER) / LEAN_MJ_PER_KG + ((1 - share) * FAT_TURNOVER) / FAT_MJ_PER_KG;
}

/** Expenditure before the cost of laying down tissue, MJ/d. */
function upkeep(plant: Plant, body: Body, food: DayFood): number {
  return (
    plant.fixedMj +
    food.shiftMj +
    FAT_UPKEEP * body.fatKg +
    LEAN_UPKEEP * body.leanKg +
    plant.activityMjPerKg * massOf(body) +
    FOOD_EFFECT * (food.energyMj - plant.habitualMj) +
    body.adaptationMj
  );
}

/** Tissue change at this food with the water stores at rest, kg/d. */
function tissueRate(plant: Plant, body: Body, food: DayFood): { fat: number; lean: number } {
  return split(plant, body, food.energyMj - upkeep(plant, body, food));
}

function split(plant: Plant, body: Body, imbalanceMj: number): { fat: number; lean: number } {
  const share = leanEnergyShare(plant, body.fatKg, imbalanceMj);
  const storedMj = imbalanceMj / (1 + turnover(share));
  return { fat: ((1 - share) * storedMj) / FAT_MJ_PER_KG, lean: (share * storedMj) / LEAN_MJ_PER_KG };
}

/** Moves the body one day on, Euler steps of 1/steps day; changes it in place. */
export function liveOneDay(plant: Plant, body: Body, food: DayFood, steps = 10): void {
  const dt = 1 / steps;
  const carbohydrateRatio = food.carbohydrateMj / plant.habitualCarbohydrateMj;
  const sodiumFromCarbohydrate =
    SODIUM_FROM_CARBOHYDRATE * plant.build.spread.water * (1 - carbohydrateRatio);
  for (let step = 0; step < steps; step++) {
    const glycogenMj = food.carbohydrateMj - plant.glycogenLoss * body.glycogenKg ** 2;
    const rate = split(plant, body, food.energyMj - glycogenMj - upkeep(plant, body, food));
    const adaptation =
      (plant.build.spread.adaptation * (food.energyMj - plant.habitualMj) - body.adaptationMj) /
      ADAPTATION_DAYS;
    const fluid =
      (food.sodiumMg -
        SODIUM_CLEARANCE * (body.extracellularKg - plant.extracellularStartKg) -
        sodiumFromCarbohydrate) /
      SODIUM_MG_PER_L;
    body.glycogenKg = Math.max(0.02, body.glycogenKg + (dt * glycogenMj) / GLYCOGEN_MJ_PER_KG);
    body.extracellularKg += dt * fluid;
    body.fatKg = Math.max(0.5, body.fatKg + dt * rate.fat);
    body.leanKg += dt * rate.lean;
    body.adaptationMj += dt * adaptation;
  }
}

/** Expenditure at this food, turnover included and water stores moving, MJ/d. */
export function expenditureOf(plant: Plant, body: Body, food: DayFood): number {
  const glycogenMj = food.carbohydrateMj - plant.glycogenLoss * body.glycogenKg ** 2;
  const imbalance = food.energyMj - glycogenMj - upkeep(plant, body, food);
  const share = leanEnergyShare(plant, body.fatKg, imbalance);
  return food.energyMj - glycogenMj - imbalance / (1 + turnover(share));
}

/** The intake at which tissue stands still today, with today's adaptation, kcal/d. */
export function maintenanceOf(plant: Plant, body: Body, shiftMj: number): number {
  const still = { energyMj: 0, carbohydrateMj: 0, sodiumMg: 0, shiftMj };
  return (upkeep(plant, body, still) / (1 - FOOD_EFFECT)) * KCAL_PER_MJ;
}

/** The pace tissue would take at this energy a day, in % of body mass a week, with today's body. */
export function paceAt(plant: Plant, body: Body, energyKcal: number, shiftMj: number): number {
  const food = { energyMj: energyKcal / KCAL_PER_MJ, carbohydrateMj: 0, sodiumMg: 0, shiftMj };
  const rate = tissueRate(plant, body, food);
  return (700 * (rate.fat + rate.lean)) / massOf(body);
}

/** The energy a day that gives this pace with today's body, kcal/d. */
export function energyForPace(plant: Plant, body: Body, pacePercent: number, shiftMj: number): number {
  const kgPerDay = (pacePercent * massOf(body)) / 700;
  const share = leanEnergyShare(plant, body.fatKg, kgPerDay);
  const kgPerMj = share / LEAN_MJ_PER_KG + (1 - share) / FAT_MJ_PER_KG;
  const storedMj = kgPerDay / kgPerMj;
  return (
    maintenanceOf(plant, body, shiftMj) +
    ((storedMj * (1 + turnover(share))) / (1 - FOOD_EFFECT)) * KCAL_PER_MJ
  );
}
