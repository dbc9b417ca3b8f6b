import type { Person } from '../maintenance/start-estimate.ts';
import type { FieldsOf } from '../records/kinds.ts';

/** The athlete as the equations of energy and body fat ask for it. Age by birth year: it may be one too many until the birthday. */
export function personOn(athlete: FieldsOf<'athlete'>, date: string): Person {
  return {
    sex: athlete.sex,
    ageYears: Number(date.slice(0, 4)) - athlete.birthYear,
    heightCm: athlete.heightCm,
    ...(athlete.fatPercent === undefined
      ? {}
      : { fatPercent: athlete.fatPercent, fatAtKg: athlete.startMassKg }),
  };
}
