import { type Eaten, habitsOf, suggestFoods } from '@platewright/core/foods/ranking.ts';
import { addDays } from '@platewright/core/season/dates.ts';
import { describe, expect, it } from 'vitest';

const today = '2026-03-20';
const sessions = new Set(Array.from({ length: 30 }, (_, i) => addDays(today, -2 * i)));
const occasion = {
  date: today,
  meal: 2,
  kindOf: (date: string) => (sessions.has(date) ? 'session' : 'recovery'),
};

function eaten(food: string, daysAgo: number, more: Partial<Eaten> = {}): Eaten {
  const per100 = { energyKcal: 100, proteinG: 5, carbohydrateG: 15, fatG: 2 };
  return { date: addDays(today, -daysAgo), meal: 2, food, name: food, grams: 100, per100, ...more };
}

function suggested(entries: Eaten[], left: Parameters<typeof suggestFoods>[2] = null): string[] {
  return suggestFoods(entries, occasion, left, 8).map(({ food }) => food);
}

describe('suggestions', () => {
  it('are what is eaten at this meal, most often first', () => {
    const entries = [2, 4, 6].flatMap((days) => [eaten('rice', days), eaten('chicken', days)]);
    entries.push(eaten('chicken', 8), eaten('oats', 2, { meal: 1 }), eaten('oats', 4, { meal: 1 }));
    expect(suggested(entries)).toEqual(['chicken', 'rice', 'oats']);
  });

  it('prefer the same kind of day, and the recent to the old', () => {
    expect(suggested([eaten('rest food', 1), eaten('session food', 2)])).toEqual([
      'session food',
      'rest food',
    ]);
    expect(suggested([eaten('old', 42), eaten('old', 44), eaten('new', 2)])).toEqual(['new', 'old']);
  });

  it('leave out what the meal already has', () => {
    expect(suggested([eaten('rice', 2), eaten('chicken', 2), eaten('rice', 0)])).toEqual(['chicken']);
    expect(suggested([eaten('rice', 2), eaten('rice', 0, { meal: 1 })])).toEqual(['rice']);
  });

  it('put what fits into what is left a little ahead, but never before a clear habit', () => {
    const fat = { per100: { energyKcal: 500, proteinG: 0, carbohydrateG: 0, fatG: 55 } };
    const left = { proteinG: 40, carbohydrateG: 60, fatG: 5 };
    const evenly = [eaten('nuts', 2, fat), eaten('rice', 2)];
    expect(suggested(evenly)).toEqual(['nuts', 'rice']);
    expect(suggested(evenly, left)).toEqual(['rice', 'nuts']);
    expect(suggested([...evenly, eaten('nuts', 4, fat)], left)).toEqual(['nuts', 'rice']);
  });

  it('come with the usual amount, as it was typed', () => {
    const entries = [2, 4, 6].map((days) => eaten('egg', days, { grams: 150, amount: '3 large' }));
    entries.push(eaten('egg', 8, { grams: 600, amount: '12 large' }));
    expect(suggestFoods(entries, occasion, null, 8)).toEqual([
      { food: 'egg', name: 'egg', grams: 150, amount: '3 large' },
    ]);
  });

  it('are none without history, and no more than asked for', () => {
    expect(suggested([])).toEqual([]);
    expect(suggestFoods([eaten('a', 2), eaten('b', 4), eaten('c', 6)], occasion, null, 2)).toHaveLength(2);
  });
});

function usual(entries: Eaten[], food: string, meal: number | null = occasion.meal): number | undefined {
  return habitsOf(entries, { ...occasion, meal }).find((habit) => habit.food === food)?.grams;
}

describe('the usual amount', () => {
  it('is the weighted median: one feast does not move it, a new habit does', () => {
    const habit = [2, 4, 6].map((days) => eaten('rice', days, { grams: 250 }));
    expect(usual([...habit, eaten('rice', 3, { grams: 900 })], 'rice')).toBe(250);
    expect(usual([...habit, ...[40, 42, 44].map((days) => eaten('rice', days))], 'rice')).toBe(250);
    expect(usual(habit, 'beans')).toBeUndefined();
  });

  it('is that of this meal where meals differ', () => {
    const entries = [2, 4, 6].flatMap((days) => [
      eaten('oats', days, { grams: 40 }),
      eaten('oats', days, { meal: 1, grams: 120 }),
    ]);
    expect(usual(entries, 'oats')).toBe(40);
    expect(usual(entries, 'oats', 1)).toBe(120);
    expect(usual([...entries, eaten('oats', 8, { meal: 1, grams: 120 })], 'oats', null)).toBe(120);
  });
});

describe('usage', () => {
  it('counts an entry of the same meal today as one, and halves it every two weeks', () => {
    const [a, b] = habitsOf([eaten('a', 0), eaten('b', 14), eaten('b', 28)], occasion);
    expect(a).toMatchObject({ food: 'a', usage: 1 });
    expect(b?.usage).toBeCloseTo(0.75, 12);
  });
});
