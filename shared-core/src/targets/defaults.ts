import type { FieldsOf } from '../records/kinds.ts';
import { proteinRates } from './protein.ts';

/**
 * What the set-up page starts with. Six meals, 1.5 g of protein per lb and 1 g of fat per kg are common practice, no
 * source (fat: the middle of 0.5 to 1.5 g/kg, Iraki et al. 2019).
 */
export const setUpDefaults = {
  rolloverHour: 3,
  meals: 6,
  wake: '07:00',
  sleep: '23:00',
  trainingTime: '17:00',
  training: { kind: 'weekdays', days: [1, 2, 4, 5] },
  proteinGPerKg: proteinRates.practice,
  fatGPerKg: 1,
  cautions: [],
} satisfies Partial<FieldsOf<'athlete'>>;
