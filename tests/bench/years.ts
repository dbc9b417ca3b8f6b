import type { Change, Json } from '@platewright/core/changes/change.ts';
import { formatClock } from '@platewright/core/changes/clock.ts';
import { datesUpTo } from '@platewright/core/season/dates.ts';
import { setUpDefaults } from '@platewright/core/targets/defaults.ts';
import { seededRandom } from './virtual-athletes/random.ts';

export const BENCH_ATHLETE = 'bench-athlete';
const DEVICE = 'bench';
const MEALS = 6;
const ENTRIES_A_MEAL = 3;
/** Of all foods of the larder a person eats so many again and again. */
const FOODS_EATEN = 60;

/** An athlete with a larder of so many foods, who has eaten and weighed in for so many years up to a date, as changes. */
export function yearsOfChanges(last: string, years: number, foods: number): Change[] {
  const random = seededRandom(20_260_102);
  const changes: Change[] = [];
  const write = (kind: string, record: string, fields: Record<string, Json>) => {
    const clock = formatClock(1_000_000 + changes.length, 0, DEVICE);
    const id = `bench-${changes.length}`;
    changes.push({ id, athlete: BENCH_ATHLETE, device: DEVICE, clock, kind, record, fields });
  };
  write('athlete', BENCH_ATHLETE, JSON.parse(JSON.stringify(athlete)));
  const larder = Array.from({ length: foods }, (_, i) => {
    const name = `${word(random.even)} ${word(random.even)}, ${word(random.even)}`;
    const per100 = { energyKcal: 165, proteinG: 21, carbohydrateG: 10, fatG: 4.5, sodiumMg: 74 };
    write('food', `food-${i}`, {
      name,
      aliases: [],
      state: 'cooked',
      per100,
      portions: [{ name: 'piece', grams: 60 }],
    });
    return { food: `food-${i}`, name, per100 };
  });
  for (const date of datesUpTo(last, Math.round(years * 365.25))) {
    const at = Date.parse(`${date}T07:00:00Z`);
    write('weigh-in', `weigh-in-${date}`, { date, kg: 85 + random.even(), at });
    for (let n = 0; n < MEALS * ENTRIES_A_MEAL; n++) {
      const eaten = larder[Math.floor(random.even() * Math.min(FOODS_EATEN, foods))];
      if (eaten === undefined) continue;
      const meal = 1 + Math.floor(n / ENTRIES_A_MEAL);
      const grams = Math.round(50 + 200 * random.even());
      write('entry', `entry-${date}-${n}`, { date, meal, ...eaten, grams, at: at + meal * 3_600_000 });
    }
  }
  return changes;
}

const athlete = {
  ...setUpDefaults,
  name: 'Bench athlete',
  sex: 'male',
  birthYear: 1990,
  heightCm: 180,
  startMassKg: 85,
  massUnit: 'kg',
  energyUnit: 'kcal',
  timeZone: 'UTC',
};

function word(even: () => number): string {
  const letter = (of: string) => of[Math.floor(even() * of.length)] ?? '';
  return Array.from({ length: 3 }, () => letter('bcdfghklmnprst') + letter('aeiou')).join('');
}
