import { type Body, growPlant, type Plant } from './plant.ts';
import { type Random, seededRandom } from './random.ts';
import type { World } from './variants.ts';

/** What the controller may know of an athlete; the rest stays in the plant. */
interface Profile {
  sex: 'female' | 'male';
  ageYears: number;
  heightCm: number;
  /** Measured with error; absent for those who never measured. */
  fatPercent?: number;
  massKg: number;
}

export interface VirtualAthlete {
  number: number;
  seed: number;
  profile: Profile;
  plant: Plant;
  start: Body;
  /** Has a cycle that moves water. */
  cycle: boolean;
}

/** The athletes of a seed: strength-trained, lean, a third of them women. Athlete n is the same in any number of athletes. */
export function population(count: number, seed: number, world: World): VirtualAthlete[] {
  return Array.from({ length: count }, (_, number) => athlete(number, seed, world));
}

/** One athlete of a seed. */
export function athlete(number: number, seed: number, world: World): VirtualAthlete {
  const random = seededRandom(seed, number, 11);
  const profile = drawProfile(random);
  const trueFatPercent =
    profile.sex === 'male' ? random.within(13, 3, 6, 22) : random.within(21, 3.5, 13, 32);
  const heightM = profile.heightCm / 100;
  // Fat-free mass index of trained people who use nothing stays below 25: Kouri EM et al. Clin J Sport Med 1995;5:223–228.
  const fatFreeIndex =
    profile.sex === 'male' ? random.within(21.3, 1.5, 18, 25) : random.within(16.9, 1.1, 14.5, 20);
  const massKg = (fatFreeIndex * heightM ** 2) / (1 - trueFatPercent / 100);
  // Mifflin MD et al. Am J Clin Nutr 1990;51:241–247.
  const restingKcal =
    10 * massKg + 6.25 * profile.heightCm - 5 * profile.ageYears + (profile.sex === 'male' ? 5 : -161);
  const { plant, body } = growPlant({
    massKg,
    fatKg: (trueFatPercent / 100) * massKg,
    restingMj: restingKcal * 0.004184 * (1.03 + world.restingSd * random.normal()),
    activityLevel: random.within(world.activity.mean, world.activity.sd, 1.4, 2.2),
    carbohydrateShare: random.within(0.46, 0.06, 0.3, 0.6),
    spread: {
      forbes: Math.exp(world.forbesSd * random.normal()),
      training: world.training.mean + world.training.sd * random.normal(),
      adaptation: Math.max(0, world.adaptation.mean + world.adaptation.sd * random.normal()),
      water: random.within(world.water.mean, world.water.sd, 0.3, 2.2),
    },
  });
  const fatPercent = Math.max(4, trueFatPercent + 2.5 * random.normal());
  const measured = random.chance(0.7);
  return {
    number,
    seed,
    profile: { ...profile, massKg, ...(measured ? { fatPercent } : {}) },
    plant,
    start: body,
    cycle: profile.sex === 'female' && random.chance(0.6),
  };
}

function drawProfile(random: Random) {
  const sex = random.chance(0.35) ? ('female' as const) : ('male' as const);
  return {
    sex,
    ageYears: Math.round(random.within(30, 8, 18, 55)),
    heightCm: Math.round(
      sex === 'male' ? random.within(178.5, 6.5, 160, 200) : random.within(166, 6, 150, 184),
    ),
  };
}
