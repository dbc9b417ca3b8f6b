import { expect, it } from 'vitest';
import { draftOfAim, emptyAthlete } from '../../daemon/dashboard/athlete-form/draft.ts';
import { readAthlete } from '../../daemon/dashboard/athlete-form/read-draft.ts';
import { readPhase } from '../../daemon/dashboard/athlete-form/read-phase.ts';

const today = '2026-02-02';
const typed = { ...emptyAthlete(), sex: 'male', birthYear: '1990', height: '180', mass: '82,5' } as const;
const athlete = (change: Partial<ReturnType<typeof emptyAthlete>>) =>
  readAthlete({ ...typed, ...change }, { today, timeZone: 'UTC' });
const cut = draftOfAim('pre-contest', today);

it('takes a number with the unit that stands beside its field', () => {
  expect(athlete({ proteinGPerKg: '2 g/kg' }).fields?.proteinGPerKg).toBe(2);
  expect(athlete({ fatPercent: '12,5 %' }).fields?.fatPercent).toBe(12.5);
  expect(readPhase({ ...cut, startMark: '420 g' }).fields?.startMarkG).toBe(420);
  expect(readPhase({ ...cut, pace: '−0,7 %' }).fields?.pacePercentPerWeek).toBe(-0.7);
});

it('refuses a birth year that the weekly call could not reckon with, and says which it can', () => {
  for (const birthYear of ['2030', '2024', '1900', '1990-03-02'])
    expect(athlete({ birthYear })).toEqual({
      fields: null,
      wrong: { birthYear: 'Type a year from 1906 to 2016, such as 1990.' },
    });
  expect(athlete({ birthYear: '2016' }).fields?.birthYear).toBe(2016);
});

it('says that a name is too long where it is', () => {
  expect(athlete({ name: 'x'.repeat(121) }).wrong.name).toContain('120 letters');
});

it('refuses a phase that can be read and can’t be meant', () => {
  expect(readPhase({ ...cut, pace: '0.7' }).wrong.pace).toContain('with a minus');
  expect(readPhase({ ...draftOfAim('off-season', today), pace: '-0.3' }).wrong.pace).toContain('is a gain');
  expect(readPhase({ ...cut, contestDate: '2026-01-31' }).wrong.contestDate).toContain('before the phase');
  expect(readPhase({ ...cut, contestDate: '2026-04-11' }).fields?.contestDate).toBe('2026-04-11');
  expect(readPhase({ ...cut, startMark: '5000' }).wrong.startMark).toContain('up to 3000');
});
