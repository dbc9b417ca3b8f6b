import type { VirtualAthlete } from './population.ts';
import { seededRandom } from './random.ts';

export interface LiftSet {
  lift: string;
  loadKg: number;
  repetitions: number;
}

interface LiftStart {
  lift: string;
  /** Most weight once at the start, kg. */
  onceKg: number;
}

/** Sets of the key lifts: strength grows with training and follows lean tissue; a good and a bad day count. */
export function strengthOf(athlete: VirtualAthlete): (day: number, leanGainedKg: number) => LiftSet[] {
  const random = seededRandom(athlete.seed, athlete.number, 53);
  const male = athlete.profile.sex === 'male' ? 1 : 0.65;
  const mass = athlete.profile.massKg;
  const starts: LiftStart[] = [
    { lift: 'squat', onceKg: 1.6 * male * mass * (1 + 0.15 * random.normal()) },
    { lift: 'bench press', onceKg: 1.15 * male * mass * (1 + 0.15 * random.normal()) },
    { lift: 'deadlift', onceKg: 1.9 * male * mass * (1 + 0.15 * random.normal()) },
  ];
  const skillPerWeek = random.within(0.0015, 0.001, -0.001, 0.005);
  return (day, leanGainedKg) => {
    const index = [0, 2, 4].indexOf(day % 7);
    const start = starts[index];
    if (!start) return [];
    const daily = seededRandom(athlete.seed, athlete.number, 59, day);
    const grown = 1 + (skillPerWeek * day) / 7 + (1.2 * leanGainedKg) / athlete.start.leanKg;
    const today = start.onceKg * grown * (1 + 0.02 * daily.normal());
    const aimed = 5 + Math.floor(4 * daily.even());
    const loadKg = Math.max(20, Math.round((0.97 * start.onceKg * grown) / (1 + aimed / 30) / 2.5) * 2.5);
    const repetitions = Math.floor(30 * (today / loadKg - 1));
    return repetitions >= 1 ? [{ lift: start.lift, loadKg, repetitions: Math.min(repetitions, 20) }] : [];
  };
}
