import { addDays } from '@platewright/core/season/dates.ts';
import { dayView } from '@platewright/core/views/day.ts';
import { describe, expect, it } from 'vitest';
import { athleteOf, entryOf, seasonOf } from '../support/season.ts';

// A Monday, so a session day of the default set-up: meals at 07:30, 11:00, 14:30, 16:00, 18:15 and 22:00.
const date = '2026-02-02';
const noon = 12 * 60;

/** A food of which 100 g are one meal of the day's plan, nearly. */
const wholeMeal = { energyKcal: 690, proteinG: 52, carbohydrateG: 90, fatG: 16 };

function ate(meal: number, id: string, per100 = wholeMeal) {
  return entryOf({ id, meal, date, per100, at: 1_770_000_000_000 + meal });
}

describe('day view', () => {
  it('asks for meal 1 on waking and the last meal at night when nothing is logged', () => {
    expect(dayView(seasonOf(), date, 7 * 60).nextMeal).toBe(1);
    expect(dayView(seasonOf(), date, 22 * 60 + 30).nextMeal).toBe(6);
    expect(dayView(seasonOf(), date, -1).nextMeal).toBe(1);
  });

  it('asks for the first meal without entries after sleep or on a past date', () => {
    const records = seasonOf({ entries: [ate(1, 'a'), ate(3, 'b')] });
    expect(dayView(records, date, Number.POSITIVE_INFINITY).nextMeal).toBe(2);
    expect(dayView(records, date, 24 * 60 + 30).nextMeal).toBe(2);
  });

  it('stays at a meal that was begun, and moves on when it was eaten', () => {
    const begun = { energyKcal: 200, proteinG: 40, carbohydrateG: 5, fatG: 2 };
    expect(dayView(seasonOf({ entries: [ate(1, 'a', begun)] }), date, 7 * 60 + 40).nextMeal).toBe(1);
    expect(dayView(seasonOf({ entries: [ate(1, 'a')] }), date, 7 * 60 + 40).nextMeal).toBe(2);
  });

  it('follows a meal that was logged ahead of its time', () => {
    expect(dayView(seasonOf({ entries: [ate(4, 'a')] }), date, 8 * 60).nextMeal).toBe(5);
  });

  it('goes on after midnight for an athlete who sleeps late', () => {
    const athlete = athleteOf({ wake: '12:00', sleep: '04:00', trainingTime: '20:00' });
    const view = dayView(seasonOf({ athlete }), date, 26 * 60 + 40);
    expect(view.nextMeal).toBe(6);
    expect(view.meals.at(-1)?.time).toBe('03:00');
  });

  it('shares what earlier meals missed out over the meals that are left', () => {
    const little = { energyKcal: 100, proteinG: 10, carbohydrateG: 12, fatG: 1 };
    const view = dayView(seasonOf({ entries: [ate(1, 'a', little)] }), date, noon);
    const left = view.meals.map((meal) => meal.left.proteinG);
    expect(view.nextMeal).toBe(2);
    expect(left[0]).toBe(0);
    expect(left.slice(1).reduce((a, b) => a + b, 0)).toBeCloseTo(300 - 10, 8);
    expect(left[1]).toBeCloseTo(290 / 5, 8);
  });

  it('never leaves less than nothing when a meal had too much', () => {
    const much = { energyKcal: 3000, proteinG: 400, carbohydrateG: 300, fatG: 20 };
    const view = dayView(seasonOf({ entries: [ate(1, 'a', much)] }), date, noon);
    for (const { left } of view.meals) expect(left.proteinG).toBe(0);
    expect(view.beams.protein.words).toMatch(/100 g over/);
  });

  it('tells by the notches whether the spread holds, not only the sum', () => {
    const late = dayView(seasonOf({ entries: [ate(3, 'a', { ...wholeMeal, proteinG: 300 })] }), date, noon);
    expect(late.beams.protein.notches.map((notch) => notch.reached)).toEqual([
      false,
      false,
      true,
      true,
      true,
      true,
    ]);
    expect(late.beams.protein.words).toMatch(/4 of 6 notches reached\. Short of its notch: meal 1, meal 2\./);
  });

  it('puts bracket, pointer and post where the targets are', () => {
    const { beams, targets } = dayView(seasonOf(), date, noon);
    expect(beams.carbohydrate.bracket).toEqual({ lowG: 450, highG: 600 });
    expect(beams.carbohydrate.pointer.atG).toBe(525);
    expect(beams.fat.post?.atG).toBe(targets.fat.floorG);
    expect(beams.protein.notches.at(-1)?.atG).toBe(300);
    for (const beam of Object.values(beams)) expect(beam.spanG).toBeGreaterThan(beam.pointer.atG);
  });

  it('shows an entry of a meal that is no longer planned at the last meal', () => {
    const view = dayView(seasonOf({ entries: [ate(8, 'a')] }), date, noon);
    expect(view.meals.at(-1)?.entries.map((entry) => entry.id)).toEqual(['a']);
  });

  it('names nutrients that some entries do not report', () => {
    const view = dayView(seasonOf({ entries: [ate(1, 'a')] }), date, noon);
    expect(view.eaten.partly).toContain('fibreG');
    expect(view.eaten.proteinG).toBe(52);
  });

  it('looks at no other date', () => {
    const others = Array.from({ length: 50 }, (_, i) =>
      entryOf({ id: `o${i}`, date: addDays(date, i - 60) }),
    );
    const entries = [ate(1, 'a')];
    expect(dayView(seasonOf({ entries: [...others, ...entries] }), date, noon)).toEqual(
      dayView(seasonOf({ entries }), date, noon),
    );
  });
});
