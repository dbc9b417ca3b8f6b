import * as model from '@platewright/core/maintenance/model.ts';
import { bodyView } from '@platewright/core/views/body.ts';
import { decideCall } from '@platewright/core/views/decide-call.ts';
import { planView } from '@platewright/core/views/plan.ts';
import { rosterRow } from '@platewright/core/views/roster.ts';
import { weekView } from '@platewright/core/views/week.ts';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { livedSeason, phaseOf } from '../support/season.ts';

vi.mock(import('@platewright/core/maintenance/model.ts'), { spy: true });

const date = '2026-02-22';
const season = livedSeason(date, 40);
const toContest = { ...season, phases: [phaseOf({ from: '2026-01-01', contestDate: '2026-06-06' })] };

describe('the model, which takes nearly all the time of a view', () => {
  beforeEach(() => vi.clearAllMocks());

  it.each([
    ['the Week page', 1, () => weekView(season, date)],
    ['the Week page with a contest ahead', 1, () => weekView(toContest, date)],
    ['the Plan page', 0, () => planView(season, date)],
    ['the Plan page with a contest ahead', 1, () => planView(toContest, date)],
    ['a decision', 1, () => decideCall(season, date, { decision: 'accepted' }, 0)],
    ['a row of the roster', 1, () => rosterRow(season, date)],
    // Once more for the lean share of four weeks, which wants maintenance as it was known before them.
    ['the Body page', 2, () => bodyView(season, date)],
  ])('is fitted no more often than needed for %s', (_, times, compute) => {
    compute();
    expect(model.fitModel).toHaveBeenCalledTimes(times);
  });
});
