import { dayTargets } from '@platewright/core/targets/day-targets.ts';
import { formatEnergy } from '@platewright/core/units/energy.ts';
import { describe, expect, it } from 'vitest';
import { athleteOf, callOf, phaseOf } from '../support/season.ts';

const date = '2026-02-02';
const cut = phaseOf({ aim: 'pre-contest', pacePercentPerWeek: -0.7, bandLow: -0.9, bandHigh: -0.5 });

function targetsOf(
  athlete: ReturnType<typeof athleteOf>,
  phase = phaseOf(),
  calls = [] as ReturnType<typeof callOf>[],
) {
  return dayTargets({ athlete, phases: [phase], calls }, date);
}

describe('rules that give way', () => {
  it('says that the band leaves a beginner of 60 kg at the evidence’s rate far under what the aim needs', () => {
    const { gaveWay, energyKcal } = targetsOf(
      athleteOf({ startMassKg: 60, heightCm: 175, birthYear: 2005, proteinGPerKg: 1.6 }),
    );
    expect(energyKcal).toBeLessThan(1700);
    expect(gaveWay.join(' ')).toMatch(/energy estimate gave way to the carbohydrate mark.*under/);
    expect(gaveWay.join(' ')).toMatch(/starting mark of about \d{3} g/);
  });

  it('says that the band takes an athlete of 140 kg far over it, and which mark would be nearer', () => {
    const { gaveWay } = targetsOf(athleteOf({ startMassKg: 140, heightCm: 185, birthYear: 1990 }));
    expect(gaveWay.join(' ')).toMatch(/energy estimate gave way.*over/);
  });

  it('says that the band and a loss contradict each other before a contest', () => {
    expect(targetsOf(athleteOf(), cut).gaveWay.join(' ')).toMatch(/energy estimate gave way.*over/);
  });

  it('is silent about the estimate once a weekly call was decided, and says that the mark left the band', () => {
    const { gaveWay } = targetsOf(athleteOf(), cut, [callOf({ markG: 300 })]);
    expect(gaveWay.join(' ')).not.toMatch(/estimate/);
    expect(gaveWay.join(' ')).toMatch(/band of 452 g to 602 g gave way to the mark of 300 g, below it/);
  });

  it('names protein beyond 35 % of energy and carbohydrate under 130 g', () => {
    const text = targetsOf(athleteOf(), cut, [callOf({ markG: 100 })]).gaveWay.join(' ');
    expect(text).toMatch(/35 % of energy from protein gave way/);
    expect(text).toMatch(/130 g of carbohydrate.*gave way to the mark of 100 g/);
  });

  it('lifts a fat rate under 0.5 g/kg to it, and says that the share of energy is not reached', () => {
    const targets = targetsOf(athleteOf({ fatGPerKg: 0.4 }));
    expect(targets.fat.targetG).toBe(46);
    expect(targets.gaveWay.join(' ')).toMatch(/fat rate of 0.40 g\/kg gave way to .* 0.50 g\/kg: 46 g/);
    expect(targets.gaveWay.join(' ')).toMatch(
      /fat floor of 65 g \(15 % of energy\) gave way to the fat target of 46 g/,
    );
  });

  it('never says that a limit gave way to the same number', () => {
    const athlete = athleteOf({ startMassKg: 50, proteinGPerKg: 2.2, fatGPerKg: 0.7 });
    expect(targetsOf(athlete, phaseOf({ startMarkG: 350 })).gaveWay.join(' ')).toMatch(
      /\(15 % of energy\) gave way to the fat target of 35 g, which is 14\.[0-9] %/,
    );
    expect(targetsOf(athleteOf(), cut, [callOf({ markG: 348 })]).gaveWay.join(' ')).toMatch(
      /limit of 35 % of energy from protein gave way to the protein quota: 301 g is 35\.[1-9] %/,
    );
  });

  it('says the day’s energy as the page does, and of which day the fat floor is 15 %', () => {
    const targets = targetsOf(athleteOf({ energyUnit: 'kJ' }), cut);
    const kJ = formatEnergy(targets.energyKcal, 'kJ');
    expect(targets.gaveWay.join(' ')).toContain(`the day has ${kJ}, over`);
    const { floorG } = targets.fat;
    const withFloor = 4 * targets.protein.quotaG + 4 * targets.carbohydrate.markG + 9 * floorG;
    expect((9 * floorG) / withFloor).toBeCloseTo(0.15, 2);
    expect(targets.reasons.find(({ about }) => about === 'fat')?.text).toContain(
      `${floorG} g is 15 % of the energy of a day with no more fat`,
    );
  });

  it('speaks of a period to a woman only', () => {
    const cautions = (sex: 'female' | 'male') =>
      targetsOf(athleteOf({ sex }), cut, [callOf({ markG: 300 })]).cautions.join(' ');
    expect(cautions('female')).toContain('or a period stays away.');
    expect(cautions('male')).toMatch(/feel cold, ill or weak\. The levels/);
  });

  it('says when the quota can’t pay for full meals', () => {
    const { gaveWay } = targetsOf(athleteOf({ proteinGPerKg: 1.6, meals: 6 }));
    expect(gaveWay.join(' ')).toMatch(/meal minimum of 36 g, 0.40 g\/kg, gave way.*pays for 3 such meals/);
  });
});

describe('cautions', () => {
  it('defers to a professional for each stated condition', () => {
    const { cautions } = targetsOf(
      athleteOf({ cautions: ['kidney', 'pregnancy', 'eating-disorder', 'diabetes'] }),
    );
    expect(cautions).toHaveLength(4);
    for (const caution of cautions) expect(caution).toMatch(/doctor|dietitian|therapist/);
    expect(cautions[0]).toMatch(/far less protein/);
  });

  it('counts the year of the eighteenth birthday as under 18, because the month is not known', () => {
    expect(targetsOf(athleteOf({ birthYear: 2008 })).cautions.join(' ')).toMatch(/Under 18/);
    expect(targetsOf(athleteOf({ birthYear: 2007 })).cautions.join(' ')).not.toMatch(/Under 18/);
  });

  it('warns under 45 and strongly under 30 kcal per kg of fat-free mass', () => {
    const lean = athleteOf({ fatPercent: 10, proteinGPerKg: 2 });
    const at = (markG: number) => targetsOf(lean, cut, [callOf({ markG })]).cautions.join(' ');
    expect(at(700)).toBe('');
    expect(at(350)).toMatch(/under the 45/);
    expect(at(150)).toMatch(/under 30 kcal per kg: low/);
  });

  it('warns of energy under rest, and of a very low one', () => {
    const small = athleteOf({ startMassKg: 60, proteinGPerKg: 1.2, fatGPerKg: 0.5 });
    const at = (markG: number) =>
      targetsOf(small, cut, [callOf({ markG, bodyMassKg: 60 })]).cautions.join(' ');
    expect(at(150)).toMatch(/less than the body uses at rest/);
    expect(at(20)).toMatch(/only under a doctor.s care/);
  });

  it('warns of an aim beyond 1 % a week', () => {
    const fast = { ...cut, pacePercentPerWeek: -1.3, bandLow: -1.5, bandHigh: -1.1 };
    expect(targetsOf(athleteOf(), fast).cautions.join(' ')).toMatch(/more than 1 %/);
  });
});
