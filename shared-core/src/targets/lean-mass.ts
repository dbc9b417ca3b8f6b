import { fatFreeKg } from '../body/fat-free-mass.ts';
import { startFatKg } from '../maintenance/start-estimate.ts';
import type { Figures } from './figures.ts';
import { personOn } from './person.ts';

/** Fat-free mass in kg at the body mass in force, from the fat of the set-up; sources as in body/fat-free-mass.ts. */
export function leanInForceKg({ athlete, numbers, date }: Figures): number {
  const { startMassKg: massKg } = athlete;
  const start = { massKg, fatKg: startFatKg(personOn(athlete, date), massKg) };
  return fatFreeKg(start, numbers.bodyMassKg);
}
