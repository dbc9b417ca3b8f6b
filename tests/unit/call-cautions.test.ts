import type { CallInput } from '@platewright/core/call/input.ts';
import type { WeeklyCall } from '@platewright/core/call/output.ts';
import { weeklyCall } from '@platewright/core/call/weekly-call.ts';
import { paceFigure } from '@platewright/core/ui/number.ts';
import { describe, expect, it } from 'vitest';
import { callOfLife, type Life } from '../support/call-input.ts';

const lose: CallInput['aim'] = {
  phase: 'pre-contest',
  pacePercentPerWeek: -0.7,
  band: { low: -0.9, high: -0.5 },
};
const hold: CallInput['aim'] = { phase: 'hold', pacePercentPerWeek: 0, band: { low: -0.15, high: 0.15 } };
const levelOf = (call: WeeklyCall, code: string) => call.cautions.find((one) => one.code === code)?.level;
const textOf = (call: WeeklyCall, code: string) => call.cautions.find((one) => one.code === code)?.text ?? '';
const aged = (input: CallInput, ageYears: number): CallInput => ({
  ...input,
  athlete: { ...input.athlete, ageYears },
});
const weekly = (count: number, at: (week: number) => number) =>
  Array.from({ length: count }, (_, week) => ({
    day: new Date(Date.UTC(2025, 0, 6) + (7 * week + 2) * 86_400_000).toISOString().slice(0, 10),
    value: at(week),
  }));

describe('a stop', () => {
  it('holds in every phase at a body mass far too low for the height', () => {
    const life: Life = { days: 42, startKg: 50, kgPerWeek: 0.3, noiseKg: 0.2 };
    for (const aim of [lose, hold, undefined]) {
      const call = weeklyCall(callOfLife(life, aim ? { aim } : {}));
      expect(levelOf(call, 'low-body-mass')).toBe('stop');
      expect(call.verdict).not.toBe('down');
      expect(call.summary[1]).toContain('talk to a doctor');
    }
  });

  it('says what it proposes when the mark goes up, with the doctor beside it', () => {
    const call = weeklyCall(callOfLife({ days: 42, kgPerWeek: -2.2, markG: 350 }, { aim: lose }));
    expect(levelOf(call, 'fast-loss')).toBe('stop');
    expect(textOf(call, 'fast-loss')).toMatch(/^Body mass changes by −\d\.\d[05] % a week/);
    expect(call.verdict).toBe('up');
    expect(call.summary[1]).toMatch(/^Raise the carbohydrate mark .*; please talk to a doctor/);
  });

  it('comes of far too little eaten, even where the log is too small to pass as whole', () => {
    const input = callOfLife({ days: 42, kgPerWeek: -0.4, eats: 0.4 });
    const days = (everyMeal: boolean): CallInput['days'] =>
      input.days.map((day) => ({
        ...day,
        intake: day.intake && { ...day.intake, complete: false, everyMeal },
      }));
    expect(levelOf(weeklyCall({ ...input, days: days(true) }), 'very-low-intake')).toBe('stop');
    expect(levelOf(weeklyCall({ ...input, days: days(false) }), 'very-low-intake')).toBeUndefined();
    // A mark that stays is not called right where a doctor should look first.
    const inBand = weeklyCall(callOfLife({ days: 42, kgPerWeek: 0.3, eats: 0.4 }));
    expect(inBand.verdict).toBe('hold');
    expect(inBand.summary[1]).toMatch(/^The mark stays at 400 g; please talk to a doctor/);
  });

  it('keeps a loss of somebody under 18 where it is, and warns at 18 and in other phases', () => {
    const input = callOfLife({ days: 42, kgPerWeek: 0 }, { aim: lose });
    const of = (ageYears: number, aim: CallInput['aim'] = lose) =>
      weeklyCall(aged({ ...input, aim }, ageYears));
    expect(of(30).verdict).toBe('down');
    expect(of(17).verdict).toBe('hold');
    expect(of(17).summary[1]).toMatch(
      /^The mark stays at 400 g and does not go down; please talk to a doctor/,
    );
    expect(of(17).wouldChange[0]?.code).toBe('doctor');
    expect([of(17), of(18), of(19), of(16, hold)].map((call) => levelOf(call, 'under-age'))).toEqual([
      'stop',
      'warn',
      undefined,
      'warn',
    ]);
  });
});

describe('what was stated at set-up', () => {
  const said = (stated: CallInput['athlete']['stated'], aim: CallInput['aim'], kgPerWeek = 0.3) => {
    const input = callOfLife({ days: 42, kgPerWeek }, { aim });
    return weeklyCall({ ...input, athlete: { ...input.athlete, ...(stated && { stated }) } });
  };

  it('keeps the mark of who is pregnant from going down, in a loss and in a hold that is outgrown', () => {
    for (const aim of [lose, hold]) {
      expect(said(undefined, aim).verdict).toBe('down');
      const call = said(['pregnancy'], aim);
      expect(levelOf(call, 'pregnancy')).toBe('stop');
      expect(call.verdict).toBe('hold');
      expect(call.nextLevers).toEqual([]);
    }
    expect(said(['pregnancy'], hold, -0.4).verdict).toBe('up');
  });

  it('keeps the mark from going down for a loss with an eating disorder', () => {
    expect(levelOf(said(['eating-disorder'], lose), 'eating-disorder')).toBe('stop');
    expect(said(['eating-disorder'], lose).verdict).toBe('hold');
    expect(levelOf(said(['eating-disorder'], hold), 'eating-disorder')).toBeUndefined();
  });

  it('leaves the call as it is with what is only to be read before it', () => {
    expect(said(['kidney', 'diabetes'], lose)).toEqual(said(undefined, lose));
  });
});

describe('cautions', () => {
  it('warn of a loss on very little body fat, by sex', () => {
    const of = (sex: 'female' | 'male', fatPercent: number) => {
      const input = callOfLife({ days: 42, kgPerWeek: -0.5, markG: 300 }, { aim: lose });
      return levelOf(
        weeklyCall({ ...input, athlete: { ...input.athlete, sex, fatPercent } }),
        'low-body-fat',
      );
    };
    expect([of('male', 4), of('male', 6), of('female', 11), of('female', 14)]).toEqual([
      'warn',
      undefined,
      'warn',
      undefined,
    ]);
  });

  it('go by the body fat that was measured last, not by that of the set-up', () => {
    const of = (fatPercent: number, newestFatPercent: number) => {
      const input = callOfLife({ days: 42, kgPerWeek: -0.5, markG: 300 }, { aim: lose });
      const athlete = { ...input.athlete, fatPercent, newestFatPercent };
      return levelOf(weeklyCall({ ...input, athlete }), 'low-body-fat');
    };
    expect([of(12, 4.8), of(4.8, 9)]).toEqual(['warn', undefined]);
  });

  it('say that an aim is held back, and judge by the band that is driven at', () => {
    const aim: CallInput['aim'] = {
      phase: 'pre-contest',
      pacePercentPerWeek: -1.5,
      band: { low: -1.7, high: -1.3 },
    };
    const call = weeklyCall(callOfLife({ days: 56, kgPerWeek: -0.85, markG: 300 }, { aim }));
    expect(textOf(call, 'aim-held-back')).toContain('goes by −1.00 % and a band of −1.20 to −0.80 %');
    expect(call.pace?.band).toEqual({ low: expect.closeTo(-1.2, 9), high: expect.closeTo(-0.8, 9) });
    expect(call.pace?.probabilityInside).toBeGreaterThan(0.5);
    expect(call.summary[0]).toContain('inside your band');
  });

  it('explain a large step by what is so', () => {
    const early = weeklyCall(callOfLife({ days: 7, kgPerWeek: -1.2 }));
    const late = weeklyCall(
      callOfLife({ days: 200, kgPerWeek: -0.4 }, { aim: { ...hold, since: '2025-07-24' } }),
    );
    expect(textOf(early, 'large-step')).toContain('rests mostly on a formula');
    expect(textOf(late, 'large-step')).toContain('the aim is a new one');
    expect(textOf(late, 'large-step')).not.toContain('formula');
  });
});

describe('a log far off the plan', () => {
  it('moves nothing, either way', () => {
    for (const kgPerWeek of [-0.6, 0, 0.4]) {
      const call = weeklyCall(callOfLife({ days: 42, kgPerWeek, eats: 0.6 }, { aim: lose }));
      expect(call.verdict).toBe('hold');
      expect(call.summary[1]).toMatch(/^Eat the plan first, and log all of it: |does what it should/);
    }
  });
});

describe('waist and lifts', () => {
  const waist = (cm: number) =>
    weekly(8, (week) => 84 + cm * week).map(({ day, value }) => ({ day, cm: value }));

  it('make the call aim at the low half of the band when the waist outruns the pace', () => {
    const life: Life = { days: 56, kgPerWeek: 0.5, noiseKg: 0.2 };
    const plain = weeklyCall(callOfLife(life));
    const call = weeklyCall(callOfLife(life, { waist: waist(1.4) }));
    expect(call.verdict).toBe('down');
    expect(call.carbohydrateG).toBeLessThan(plain.carbohydrateG - 5);
  });

  it('hold a loss back, and say so, when lifts fall and the waist stands', () => {
    const lift = (name: string) =>
      weekly(8, (week) => 140 - 2.5 * week).map(({ day, value }) => ({
        day,
        lift: name,
        loadKg: value,
        repetitions: 5,
      }));
    const keyLifts = [...lift('squat'), ...lift('deadlift')].sort((a, b) => a.day.localeCompare(b.day));
    const call = weeklyCall(
      callOfLife({ days: 56, kgPerWeek: -0.1, markG: 300 }, { aim: lose, waist: waist(0), keyLifts }),
    );
    expect(call.verdict).toBe('hold');
    expect(call.summary[1]).toBe(
      'Hold 300 g: key lifts fall while the waist stands, so nothing is made faster.',
    );
    expect(call.wouldChange.map(({ code }) => code)).toContain('lifts');
  });

  it('leave the aim to the athlete: one near an end of the band is driven at there', () => {
    const at = (pacePercentPerWeek: number) =>
      weeklyCall(
        callOfLife(
          { days: 23, kgPerWeek: 0, noiseKg: 0.2 },
          {
            aim: { phase: 'off-season', pacePercentPerWeek, band: { low: 0.2, high: 0.5 } },
          },
        ),
      ).carbohydrateG;
    expect(at(0.2)).toBeLessThan(at(0.35));
    expect(at(0.35)).toBeLessThan(at(0.5));
  });
});

describe('levers', () => {
  it('leave energy availability alone: no cardio at its guard', () => {
    const call = weeklyCall(callOfLife({ days: 70, kgPerWeek: -0.1, markG: 110 }, { aim: lose }));
    expect(call.nextLevers.map(({ code }) => code)).toEqual(['pace', 'date']);
  });

  it('are there whenever the call says to pick one', () => {
    let picked = 0;
    for (const markG of [98, 103, 106, 108, 110, 113, 116])
      for (const kgPerWeek of [-0.1, -0.25, -0.4, -0.5, -0.55, -0.6])
        for (const seed of [1, 2, 3]) {
          const call = weeklyCall(callOfLife({ days: 70, kgPerWeek, markG, seed }, { aim: lose }));
          if (!call.summary[1].includes('pick one')) continue;
          picked++;
          expect(call.nextLevers.length).toBeGreaterThan(0);
        }
    expect(picked).toBeGreaterThan(5);
  });

  it('are not named to somebody who loses faster than the aim', () => {
    const call = weeklyCall(callOfLife({ days: 42, kgPerWeek: -1.4, markG: 60 }, { aim: lose }));
    expect(call.summary[1]).toContain('too little energy');
    expect(call.nextLevers).toEqual([]);
  });

  it('speak of no slower pace in a gain', () => {
    const call = weeklyCall(callOfLife({ days: 70, kgPerWeek: 0.8, markG: 110 }));
    expect(call.nextLevers.map(({ text }) => text).join(' ')).not.toMatch(/slower|later/);
    const gaining = weeklyCall(callOfLife({ days: 70, kgPerWeek: 0.3, markG: 110 }, { aim: lose }));
    expect(gaining.nextLevers.map(({ text }) => text).join(' ')).toMatch(/Another aim: \+0\.\d+ % a week/);
  });
});

describe('what would have changed the call', () => {
  it('says what to do about days that look half logged because the plan asks for too much', () => {
    const input = callOfLife({ days: 42, kgPerWeek: 0.3, eats: 0.6 });
    const said = (everyMeal: boolean) =>
      weeklyCall({
        ...input,
        days: input.days.map((day) => ({
          ...day,
          intake: day.intake && { ...day.intake, complete: false, everyMeal },
        })),
      }).wouldChange.find(({ code }) => code === 'more-log')?.text;
    expect(said(true)).toContain('14 days with nearly every meal in the log look too small to be all');
    expect(said(false)).toBe('More days logged in full: 0 in the last 14.');
  });

  it('says paces as the page does, to 0.05, and never the expected one as the one to reach', () => {
    for (let kgPerWeek = -0.6; kgPerWeek < 0.9; kgPerWeek += 0.1) {
      const call = weeklyCall(callOfLife({ days: 56, kgPerWeek, seed: 3 }));
      const said = call.wouldChange.find(({ code }) => code === 'pace');
      if (!said || !call.pace) continue;
      const [expected, ...reached] = [...said.text.matchAll(/[−+]?\d\.\d\d(?= %)/g)].map(String).reverse();
      expect(expected).toBe(paceFigure(call.pace.expectedAtMark.mean));
      for (const pace of reached) {
        expect(pace).toMatch(/[05]$/);
        expect(pace).not.toBe(expected);
      }
    }
  });

  const numbersOf = (call: WeeklyCall, code: string) =>
    call.wouldChange.find((item) => item.code === code)?.numbers ?? {};

  it('is not so yet', () => {
    for (let seed = 1; seed <= 40; seed++)
      for (const kgPerWeek of [-0.1, 0.3, 0.55]) {
        const call = weeklyCall(callOfLife({ days: 42, kgPerWeek, seed }));
        const { expectedPercentPerWeek = 0, lower, upper } = numbersOf(call, 'pace');
        // Higher maintenance means a slower pace.
        if (upper !== undefined) expect(expectedPercentPerWeek).toBeGreaterThan(upper);
        if (lower !== undefined) expect(expectedPercentPerWeek).toBeLessThan(lower);
        const { maintenanceKcal = 0, ...ends } = numbersOf(call, 'maintenance');
        if (ends.upper !== undefined) expect(maintenanceKcal).toBeLessThan(ends.upper);
        if (ends.lower !== undefined) expect(maintenanceKcal).toBeGreaterThan(ends.lower);
        expect(call.wouldChange.length).toBeGreaterThan(0);
        if (call.verdict === 'up') expect(upper).toBeUndefined();
        if (call.verdict === 'down') expect(lower).toBeUndefined();
      }
  });

  it('is energy availability where that raised the mark', () => {
    const call = weeklyCall(callOfLife({ days: 42, kgPerWeek: -0.7, markG: 60 }, { aim: lose }));
    expect(call.wouldChange.map(({ code }) => code)).toEqual(['energy-availability']);
  });
});

describe('input that cannot be', () => {
  const input = callOfLife({ days: 20 });
  it.each<[string, object]>([
    [
      'a band of no numbers',
      { targets: { ...input.targets, carbohydrateBand: { lowG: Number.NaN, highG: 500 } } },
    ],
    ['an aim outside its band', { aim: { ...input.aim, pacePercentPerWeek: 0.9 } }],
    ['a mark that is nothing', { targets: { ...input.targets, carbohydrateG: null } }],
  ])('refuses %s', (_, wrong) => {
    expect(() => weeklyCall(Object.assign({}, input, wrong))).toThrow(RangeError);
  });

  it('overlooks a call of days to come', () => {
    const calls: CallInput['calls'] = [
      { day: '2025-03-01', decision: 'accepted', proposedG: 450, inForceG: 450 },
    ];
    expect(weeklyCall({ ...input, calls }).carbohydrateG).toBe(weeklyCall(input).carbohydrateG);
  });
});
