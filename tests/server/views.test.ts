import { beforeEach, describe, expect, it } from 'vitest';
import { ATHLETE, athleteFields, entryFields, phaseFields } from './fields.ts';
import { problemOf, useHouse } from './house.ts';

const house = useHouse();
let headers: Record<string, string>;
beforeEach(async () => {
  headers = await house().dashboard();
});

async function store(...edits: object[]): Promise<void> {
  expect((await house().call('/v1/records', { headers, body: { edits } })).status).toBe(200);
}

async function setUp(): Promise<void> {
  await store(
    { kind: 'athlete', athlete: ATHLETE, id: ATHLETE, fields: athleteFields },
    { kind: 'phase', athlete: ATHLETE, id: 'p', fields: phaseFields },
  );
}

async function view(name: string, query = '') {
  const answer = await house().call(`/v1/views/${name}${query}`, { headers });
  expect(answer.status).toBe(200);
  return await answer.json();
}

describe('a view', () => {
  it.each(['day', 'plan', 'week', 'body', 'lifts', 'larder', 'habits'])(
    '%s of nobody says what to do',
    async (name) => {
      for (const query of ['', '?athlete=bob']) {
        const answer = await house().call(`/v1/views/${name}${query}`, { headers });
        expect(answer.status).toBe(404);
        expect((await problemOf(answer)).detail).toMatch(/Set one up/);
      }
      expect((await house().call(`/v1/views/${name}`)).status).toBe(401);
    },
  );

  it('of a day shows the entries of that day', async () => {
    await setUp();
    await store(
      { kind: 'entry', athlete: ATHLETE, fields: entryFields('2026-03-02', 200) },
      { kind: 'entry', athlete: ATHLETE, fields: entryFields('2026-03-01', 100) },
    );
    const today = await view('day');
    expect(today.date).toBe('2026-03-02');
    expect(today.eaten.proteinG).toBeCloseTo(46);
    expect((await view('day', '?date=2026-03-01')).eaten.proteinG).toBeCloseTo(23);
    expect((await view('day', '?date=2026-03-09')).eaten.proteinG).toBe(0);
  });

  it('without a date is of the athlete’s own day, which changes at the roll-over hour there', async () => {
    await setUp();
    house().now = Date.parse('2026-03-03T01:59:00Z');
    expect((await view('plan')).date).toBe('2026-03-02');
    house().now = Date.parse('2026-03-03T02:00:00Z');
    expect((await view('plan')).date).toBe('2026-03-03');
    await store({ kind: 'athlete', athlete: ATHLETE, fields: { timeZone: 'Nowhere/None' } });
    expect((await view('plan')).date).toBe('2026-03-02');
  });

  it('of a day keeps a mark that was decided long ago', async () => {
    await setUp();
    const call = {
      ...{ date: '2026-01-10', verdict: 'up', decision: 'accepted', proposedG: 333, markG: 333 },
      ...{ bodyMassKg: 70, summary: 'Up.', at: 1 },
    };
    await store({ kind: 'weekly-call', athlete: ATHLETE, id: 'call-2026-01-10', fields: call });
    for (const date of ['2026-01-10', '2026-12-31', '2028-06-01']) {
      expect((await view('day', `?date=${date}`)).targets.carbohydrate.markG).toBe(333);
    }
    expect((await view('day', '?date=2026-01-09')).targets.carbohydrate.markG).not.toBe(333);
  });

  it('of the lifts shows their sets up to the date', async () => {
    await setUp();
    const lift = { name: 'Squat', key: true, smallestStepKg: 2.5 };
    const set = (date: string) => ({ date, lift: 'squat', loadKg: 100, repetitions: 5 });
    await store(
      { kind: 'lift', athlete: ATHLETE, id: 'squat', fields: lift },
      { kind: 'lift-set', athlete: ATHLETE, id: 's1', fields: set('2026-03-01') },
      { kind: 'lift-set', athlete: ATHLETE, id: 's2', fields: set('2026-03-03') },
    );
    const { lifts } = await view('lifts');
    expect(lifts).toMatchObject([{ ...lift, nextMark: { loadKg: 102.5, repetitions: 5 } }]);
    expect(lifts[0].sets).toEqual([{ id: 's1', date: '2026-03-01', loadKg: 100, repetitions: 5 }]);
  });

  it('of habits shows what each meal had in the eight weeks up to the date', async () => {
    await setUp();
    await store(
      ...[
        ['2026-01-04', 500],
        ['2026-01-05', 200],
        ['2026-03-03', 700],
      ].map(([date, grams]) => ({
        kind: 'entry',
        athlete: ATHLETE,
        fields: entryFields(`${date}`, Number(grams)),
      })),
    );
    const { meals, anyMeal, date } = await view('habits');
    expect(date).toBe('2026-03-02');
    expect(meals).toHaveLength(athleteFields.meals);
    for (const habits of [...meals, anyMeal]) expect(habits).toMatchObject([{ grams: 200 }]);
    expect((await view('habits', '?date=2026-03-03')).meals[0]).toMatchObject([{ grams: 700 }]);
  });

  it('of the larder shows the starter foods', async () => {
    await setUp();
    expect((await view('larder')).foods.length).toBeGreaterThanOrEqual(150);
  });
});

describe('the weekly call', () => {
  const dates = Array.from({ length: 28 }, (_, i) =>
    new Date(Date.UTC(2026, 1, 3 + i)).toISOString().slice(0, 10),
  );

  async function fourWeeks(): Promise<void> {
    await setUp();
    for (const date of dates) {
      const meals = [1, 2, 3, 4, 5].map((meal) => ({
        kind: 'entry',
        athlete: ATHLETE,
        fields: {
          ...entryFields(date, 100),
          meal,
          per100: { energyKcal: 512, proteinG: 28, carbohydrateG: 49, fatG: 13 },
        },
      }));
      const weighIn = { date, kg: 70 + 0.3 * Math.sin(date.charCodeAt(9)), at: 1 };
      await store(...meals, { kind: 'weigh-in', athlete: ATHLETE, id: `w-${date}`, fields: weighIn });
    }
  }

  function decide(decision: string, more: object = {}): Promise<Response> {
    const body = { athlete: ATHLETE, date: '2026-03-02', decision, ...more };
    return house().call('/v1/weekly-call', { headers, body });
  }

  it('is recorded as it was computed, whatever was decided', async () => {
    await fourWeeks();
    const { call } = await view('week');
    const body = await view('body');
    const marks = { accepted: call.carbohydrateG, changed: 321, declined: call.markInForceG };
    for (const [decision, markG] of Object.entries(marks)) {
      const answer = await decide(decision, { markG: 321 });
      expect(answer.status).toBe(200);
      const week = await view('week');
      expect(week.decision).toMatchObject({
        decision,
        markG,
        proposedG: call.carbohydrateG,
        verdict: call.verdict,
      });
      expect(week.decision.bodyMassKg).toBeCloseTo(body.points.at(-1).lineKg.mean, 1);
      expect(week.decision.summary).toBe(call.summary.join(' '));
      expect(week.markInForceG).toBe(markG);
      expect((await view('day')).targets.carbohydrate.markG).toBe(markG);
    }
  });

  it('has the contest ahead that the plan has', async () => {
    await fourWeeks();
    expect((await view('plan')).contest).toBeNull();
    await store({ kind: 'phase', athlete: ATHLETE, id: 'p', fields: { contestDate: '2026-05-01' } });
    const { contest } = await view('plan');
    expect(contest).toMatchObject({ phase: 'p', date: '2026-05-01', daysLeft: 60 });
    expect((await view('week')).contest).toEqual(contest);
    expect((await view('plan', '?date=2026-05-01')).contest).toBeNull();
  });

  it('can be decided again after the decision was taken back', async () => {
    await fourWeeks();
    expect((await decide('changed', { markG: 321 })).status).toBe(200);
    await store({ kind: 'weekly-call', athlete: ATHLETE, id: 'call-2026-03-02', fields: { removed: true } });
    expect((await view('week')).decision).toBeNull();
    expect((await decide('changed', { markG: 333 })).status).toBe(200);
    expect((await view('week')).decision).toMatchObject({ markG: 333 });
  });

  it('is not decided without an aim, before its day, or without a mark to change to', async () => {
    expect((await decide('accepted')).status).toBe(404);
    await store({ kind: 'athlete', athlete: ATHLETE, fields: athleteFields });
    const aimless = await decide('accepted');
    expect(aimless.status).toBe(409);
    expect((await problemOf(aimless)).detail).toMatch(/phase/);
    await fourWeeks();
    const early = await decide('accepted', { date: '2026-03-03' });
    expect(early.status).toBe(422);
    await problemOf(early);
    expect((await decide('changed')).status).toBe(422);
    expect((await decide('changed', { markG: -5 })).status).toBe(422);
  });
});

describe('the roster', () => {
  const add = async (id: string, name: string) =>
    await store(
      { kind: 'athlete', athlete: id, id, fields: { ...athleteFields, name } },
      { kind: 'phase', athlete: id, id: `phase-${id}`, fields: phaseFields },
    );

  it('shows each athlete with phase, pace and whose call is due, on that athlete’s own date', async () => {
    await add('ann', 'Ann');
    await add('bob', 'Bob');
    await store({ kind: 'athlete', athlete: 'new', id: 'new', fields: { ...athleteFields, name: 'New' } });
    for (let day = 1; day <= 28; day++) {
      const date = `2026-02-${String(day).padStart(2, '0')}`;
      const weighIn = { date, kg: 70 - day * 0.02, at: Date.parse(date) };
      await store({ kind: 'weigh-in', athlete: 'bob', id: `w${day}`, fields: weighIn });
    }
    const decided = {
      ...{ date: '2026-02-27', verdict: 'hold', decision: 'accepted', proposedG: 250, markG: 250 },
      ...{ bodyMassKg: 70, summary: 'Hold.', at: 1 },
    };
    await store({ kind: 'weekly-call', athlete: 'bob', id: 'call', fields: decided });
    const { rows, more } = await view('roster');
    expect(more).toBe(false);
    expect(rows).toEqual([
      {
        athlete: 'ann',
        name: 'Ann',
        phase: 'off-season',
        pace: null,
        callDueOn: '2026-03-02',
        due: true,
        stop: false,
      },
      expect.objectContaining({ athlete: 'bob', phase: 'off-season', callDueOn: '2026-03-06', due: false }),
      { athlete: 'new', name: 'New', phase: null, pace: null, callDueOn: null, due: false, stop: false },
    ]);
    const body = await view('body', '?athlete=bob');
    expect(rows[1].pace).toEqual({
      meanPercentPerWeek: body.pace.meanPercentPerWeek,
      interval90: body.pace.interval90,
      band: body.pace.band,
    });
  });

  it('comes in parts where there are many', async () => {
    for (let i = 10; i < 35; i++) await add(`a${i}`, `Athlete ${i}`);
    const first = await view('roster');
    expect([first.rows.length, first.more]).toEqual([20, true]);
    const second = await view('roster', `?after=${first.rows.at(-1).athlete}`);
    expect([second.rows.length, second.more]).toEqual([5, false]);
  });
});
