import { whyRefused } from '@platewright/core/changes/check.ts';
import { applyChange, type StoredRecord } from '@platewright/core/changes/merge.ts';
import { addDays } from '@platewright/core/season/dates.ts';
import { localTime } from '@platewright/core/season/local-date.ts';
import { bodyView } from '@platewright/core/views/body.ts';
import { gatherSeason } from '@platewright/core/views/gather.ts';
import type { SeasonRecords } from '@platewright/core/views/season-records.ts';
import { weekView } from '@platewright/core/views/week.ts';
import { describe, expect, it } from 'vitest';
import { demoDay, demoSeason } from '../../fixtures/season/generate.ts';
import { DEMO_ATHLETE } from '../../fixtures/season/journal.ts';

const known = new Map<string, SeasonRecords>();

function seasonOf(endDate: string): SeasonRecords {
  const season = known.get(endDate) ?? made(endDate);
  known.set(endDate, season);
  return season;
}

function made(endDate: string): SeasonRecords {
  const records = new Map<string, StoredRecord>();
  for (const change of demoSeason(endDate)) {
    records.set(change.record, applyChange(records.get(change.record), change));
  }
  const season = gatherSeason([...records.values()], DEMO_ATHLETE);
  if (season === null) throw new Error('the demo season has no athlete');
  return season;
}

describe('demo season', () => {
  it('is the same for the same date and seed, and holds only changes the daemon accepts', () => {
    const season = demoSeason('2026-11-25');
    expect(demoSeason('2026-11-25')).toEqual(season);
    expect(season.map(whyRefused).filter((reason) => reason !== null)).toEqual([]);
  });

  it.each(['UTC', 'Pacific/Kiritimati', 'America/New_York', 'Asia/Kathmandu'])(
    'is lived by the clocks of %s, also when they change',
    (timeZone) => {
      const times = (kind: string, zone: string) =>
        demoSeason('2026-11-25', { timeZone: zone })
          .filter((change) => change.kind === kind)
          .map(({ fields }) => {
            const { date, minutes } = localTime(Number(fields.at), demoDay(zone));
            return { date, minutes, on: fields.date };
          });
      for (const { date, minutes, on } of times('weigh-in', timeZone))
        expect({ date, minutes }).toEqual({ date: on, minutes: 7 * 60 + 10 });
      expect(times('entry', timeZone)).toEqual(times('entry', 'UTC'));
      expect(demoSeason('2026-11-25', { timeZone })[0]?.fields).toMatchObject({ timeZone });
    },
  );

  it('spans 26 weeks with weigh-ins, tape, calipers, entries, key lifts and calls', () => {
    const season = seasonOf('2026-11-25');
    expect(season.phases.map((phase) => phase.from).toSorted()[0]).toBe(addDays('2026-11-25', -181));
    expect(season.weighIns.length).toBeGreaterThan(140);
    expect(season.entries.length).toBeGreaterThan(2500);
    expect(season.calls.length).toBeGreaterThan(20);
    expect(new Set(season.tape.map((tape) => tape.site)).size).toBe(5);
    expect(season.calipers).toHaveLength(7);
    expect(bodyView(season, '2026-11-25').fat).toMatchObject({ date: '2026-11-24' });
    expect(new Set(season.liftSets.map((set) => set.lift)).size).toBe(5);
  });

  it.each([0, 1, 2])('holds only decisions that the week page offers, %i times 25 days on', (times) => {
    const { calls } = seasonOf(addDays('2026-11-25', times * 25));
    expect(calls.filter(({ verdict, decision }) => verdict === 'hold' && decision === 'declined')).toEqual(
      [],
    );
  });

  it('leaves the last date open: three meals are logged', () => {
    const today = seasonOf('2026-11-25').entries.filter((entry) => entry.date === '2026-11-25');
    expect([...new Set(today.map((entry) => entry.meal))].toSorted()).toEqual([1, 2, 3]);
  });

  it('calls a pace inside the band only where it is', () => {
    const end = '2026-11-25';
    let inside = 0;
    for (let day = -168; day <= 0; day += 3) {
      const { call } = weekView(seasonOf(end), addDays(end, day));
      if (!call?.pace || !/inside your band/.test(call.summary[0])) continue;
      inside += 1;
      const { mean } = call.pace.expectedAtMark;
      expect(mean, call.summary[0]).toBeGreaterThanOrEqual(call.pace.band.low);
      expect(mean, call.summary[0]).toBeLessThanOrEqual(call.pace.band.high);
    }
    expect(inside).toBeGreaterThan(10);
  });

  it.each([0, 1, 2])('ends %i days on with an open call that raises the mark', (days) => {
    const end = addDays('2026-11-25', days * 25);
    expect(weekView(seasonOf(end), end)).toMatchObject({ decision: null, call: { verdict: 'up' } });
  });
});
