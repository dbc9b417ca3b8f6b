import type { Phase } from '@platewright/core/records/kinds.ts';
import { addDays } from '@platewright/core/season/dates.ts';
import { keptUnits } from '@platewright/core/units/reader.ts';
import { bodyView } from '@platewright/core/views/body.ts';
import type { ContestAhead } from '@platewright/core/views/contest.ts';
import { planView } from '@platewright/core/views/plan.ts';
import type { SeasonRecords } from '@platewright/core/views/season-records.ts';
import { weekView } from '@platewright/core/views/week.ts';
import { describe, expect, it } from 'vitest';
import { contestWords } from '../../daemon/dashboard/targets/contest-words.ts';
import { athleteOf, livedSeason, phaseOf } from '../support/season.ts';

const date = '2026-02-22';
const loss = { aim: 'pre-contest', pacePercentPerWeek: -0.7, bandLow: -0.9, bandHigh: -0.5 } as const;

/** Eleven weeks and three days before a contest, unless changed. */
function seasonOf(phase: Partial<Phase> = {}, more: Phase[] = []): SeasonRecords {
  const contestDate = addDays(date, 80);
  return {
    ...livedSeason(date, 45),
    phases: [phaseOf({ from: '2026-01-12', ...loss, contestDate, ...phase }), ...more],
  };
}

/** As the Plan and the Week page have it, which must be the same. */
function contestOf(season: SeasonRecords): ContestAhead | null {
  const { contest } = planView(season, date);
  expect(weekView(season, date).contest).toEqual(contest);
  return contest;
}

function nowKg(season: SeasonRecords): number {
  return bodyView(season, date).points.at(-1)?.lineKg.mean ?? Number.NaN;
}

describe('a contest ahead', () => {
  it('is so many days off, with the line of today at the pace aimed for and at both ends of the present one', () => {
    const season = seasonOf();
    const contest = contestOf(season);
    expect(contest).toMatchObject({ phase: 'phase-1', date: addDays(date, 80), daysLeft: 80 });
    expect(contest?.atAimKg).toBeCloseTo(nowKg(season) * 0.993 ** (80 / 7), 9);
    const { interval90 } = bodyView(season, date).pace ?? {};
    for (const end of ['low', 'high'] as const) {
      const percent = interval90?.[end] ?? Number.NaN;
      expect(contest?.atPaceKg?.[end]).toBeCloseTo(nowKg(season) * (1 + percent / 100) ** (80 / 7), 9);
    }
  });

  it('is nothing once the day has come, without a contest, without a line, and when the call says to stop', () => {
    expect(contestOf(seasonOf({ contestDate: date }))).toBeNull();
    expect(contestOf(seasonOf({ contestDate: addDays(date, -7) }))).toBeNull();
    const { contestDate: _, ...without } = phaseOf({ from: '2026-01-12', ...loss });
    expect(contestOf({ ...seasonOf(), phases: [without] })).toBeNull();
    expect(contestOf({ ...seasonOf(), weighIns: [] })).toBeNull();
    expect(contestOf({ ...seasonOf(), athlete: athleteOf({ cautions: ['eating-disorder'] }) })).toBeNull();
  });

  it('goes by the phases that start before it, and says nothing of a pace that is to change', () => {
    const rest = phaseOf({
      ...{ id: 'phase-2', from: addDays(date, 14) },
      ...{ aim: 'hold', pacePercentPerWeek: 0, bandLow: -0.15, bandHigh: 0.15 },
    });
    const season = seasonOf({}, [rest]);
    const contest = contestOf(season);
    expect(contest).toMatchObject({ phase: 'phase-1', throughPhases: true, atPaceKg: null });
    expect(contest?.atAimKg).toBeCloseTo(nowKg(season) * 0.993 ** 2, 9);
    const after = phaseOf({ ...rest, from: addDays(date, 80) });
    expect(contestOf(seasonOf({}, [after]))?.throughPhases).toBe(false);
  });

  it('is nothing where it lies too far ahead for any pace to hold', () => {
    expect(contestOf(seasonOf({ contestDate: addDays(date, 731) }))).not.toBeNull();
    expect(contestOf(seasonOf({ contestDate: addDays(date, 732) }))).toBeNull();
  });

  it('is the next one of all that are planned', () => {
    const later = phaseOf({ ...loss, id: 'phase-2', from: addDays(date, 7), contestDate: addDays(date, 90) });
    expect(contestOf(seasonOf({}, [later]))?.phase).toBe('phase-1');
    expect(contestOf(seasonOf({ contestDate: addDays(date, 91) }, [later]))?.phase).toBe('phase-2');
  });

  it('expects no more than what the call drives at, where the aim is held back', () => {
    const season = seasonOf({ pacePercentPerWeek: -1.8, bandLow: -2 });
    expect(contestOf(season)?.atAimKg).toBeCloseTo(nowKg(season) * 0.99 ** (80 / 7), 9);
  });

  it('says nothing of the present pace while there is too little to say', () => {
    const season = seasonOf();
    const contest = contestOf({ ...season, weighIns: season.weighIns.slice(-2) });
    expect(contest?.atAimKg).toBeLessThan(95);
    expect(contest?.atPaceKg).toBeNull();
  });

  it('is worded as an expectation, in the units of the athlete', () => {
    const contest = {
      ...{ phase: 'phase-1', date: '2026-05-13', daysLeft: 80, throughPhases: false },
      ...{ atAimKg: 84, atPaceKg: { low: 82.04, high: 86.96 } },
    };
    expect(contestWords(contest, keptUnits)).toBe(
      '11 weeks and 3 days to the contest on 13 May 2026. At the pace aimed for, expect about 84.0 kg then; if the pace of the last 14 days went on, 82.0 to 87.0 kg (its 90 % interval).',
    );
    expect(
      contestWords(
        { ...contest, daysLeft: 8, throughPhases: true, atPaceKg: null },
        { mass: 'lb', energy: 'kJ' },
      ),
    ).toBe(
      '1 week and 1 day to the contest on 13 May 2026. At the paces that your phases aim for, expect about 185.2 lb then.',
    );
    expect(contestWords({ ...contest, daysLeft: 6 }, keptUnits)).toMatch(/^6 days to/);
    expect(contestWords({ ...contest, daysLeft: 14 }, keptUnits)).toMatch(/^2 weeks to/);
  });
});
