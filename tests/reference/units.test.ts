import { formatDecimal, parseDecimal } from '@platewright/core/units/decimal.ts';
import {
  formatEnergy,
  formatEstimatedEnergy,
  kcalFromKJ,
  kJFromKcal,
  kJPerKcal,
  parseEnergy,
} from '@platewright/core/units/energy.ts';
import { cmPerInch, formatHeight, formatTape, parseLength } from '@platewright/core/units/length.ts';
import {
  formatBodyMass,
  gramsPer,
  kgFromPounds,
  parseBodyMass,
  poundsFromKg,
} from '@platewright/core/units/mass.ts';
import { roundTo } from '@platewright/core/units/round.ts';
import { millilitresPer } from '@platewright/core/units/volume.ts';
import { describe, expect, it } from 'vitest';

// Exact values: UCUM (ucum-essence.xml 2.2). That NIST SP 811, Appendix B, gives the same ones is from memory.
describe('mass', () => {
  it('has the avoirdupois pound of 7000 grains and its sixteenth', () => {
    expect(gramsPer.lb).toBeCloseTo((7000 * 64.79891) / 1000, 11);
    expect(gramsPer.oz).toBe(gramsPer.lb / 16);
    expect(8 * gramsPer.oz).toBeCloseTo(226.796185, 12);
  });

  it('converts body mass both ways', () => {
    expect(kgFromPounds(180)).toBeCloseTo(81.6466266, 10);
    expect(kgFromPounds(200)).toBeCloseTo(90.718474, 10);
    expect(poundsFromKg(90.718474)).toBeCloseTo(200, 10);
  });

  it('turns rates per pound into rates per kilogram', () => {
    expect(1.5 / kgFromPounds(1)).toBeCloseTo(3.306934, 6);
    expect(1.6 * kgFromPounds(1)).toBeCloseTo(0.725748, 6);
    expect(2.2 * kgFromPounds(1)).toBeCloseTo(0.997903, 6);
    expect(3500 / kgFromPounds(1)).toBeCloseTo(7716.179, 3);
    expect((kgFromPounds(2) / (365.25 / 12)) * 7 * 1000).toBeCloseTo(208.634, 3);
  });

  it('shows and reads body mass in the unit of the athlete', () => {
    expect(formatBodyMass(81.6466266, 'lb')).toBe('180.0 lb');
    expect(formatBodyMass(81.6466266, 'kg')).toBe('81.6 kg');
    expect(parseBodyMass('82,4', 'kg')).toBe(82.4);
    expect(parseBodyMass('180', 'lb')).toBeCloseTo(81.6466266, 10);
    expect(parseBodyMass('180 lbs', 'kg')).toBeCloseTo(81.6466266, 10);
    for (const unreadable of ['', 'heavy', '-3', '0', '82 stone', '8 2']) {
      expect(parseBodyMass(unreadable, 'kg')).toBeUndefined();
    }
  });
});

describe('energy', () => {
  it('uses the thermochemical calorie', () => {
    expect(kJPerKcal).toBe(4.184);
    expect(kJFromKcal(2500)).toBeCloseTo(10_460, 9);
    expect(kcalFromKJ(10_460)).toBeCloseTo(2500, 9);
  });

  it('shows sums to 1 and estimates to 10 kcal or 50 kJ', () => {
    expect(formatEnergy(389.4, 'kcal')).toBe('389 kcal');
    expect(formatEnergy(3460, 'kJ')).toBe('14\u202f477 kJ');
    expect(formatEstimatedEnergy(3464.9, 'kcal')).toBe('3460 kcal');
    expect(formatEstimatedEnergy(3460, 'kJ')).toBe('14\u202f500 kJ');
  });

  it('reads kcal and kJ', () => {
    expect(parseEnergy('380', 'kcal')).toBe(380);
    expect(parseEnergy('1590 kJ', 'kcal')).toBeCloseTo(380.019, 3);
    expect(parseEnergy('1590', 'kJ')).toBeCloseTo(380.019, 3);
    expect(parseEnergy('much', 'kcal')).toBeUndefined();
  });
});

describe('volume', () => {
  it('derives the customary measures from the gallon of 231 cubic inches', () => {
    const gallon = 231 * cmPerInch ** 3;
    expect(gallon).toBeCloseTo(3785.411784, 9);
    expect(millilitresPer['fl oz']).toBeCloseTo(gallon / 128, 10);
    expect(millilitresPer.tbsp).toBe(millilitresPer['fl oz'] / 2);
    expect(millilitresPer.tsp).toBeCloseTo(millilitresPer.tbsp / 3, 12);
    expect(millilitresPer.cup).toBe(16 * millilitresPer.tbsp);
  });
});

describe('length', () => {
  it('has the inch of 2.54 cm', () => {
    expect(70 * cmPerInch).toBeCloseTo(177.8, 10);
    expect(formatHeight(177.8, 'in')).toBe('5 ft 10 in');
    expect(formatHeight(182.6, 'in')).toBe('6 ft 0 in');
    expect(formatHeight(177.8, 'cm')).toBe('178 cm');
    expect(formatTape(83.82, 'in')).toBe('33.0 in');
  });

  it('reads what people type for a height', () => {
    for (const typed of ['5\'10"', '5 ft 10 in', '5’10', '70 in', '70"', '70', '177.8 cm', '1,778 m']) {
      expect(parseLength(typed, 'in')).toBeCloseTo(177.8, 10);
    }
    expect(parseLength('6 ft', 'cm')).toBeCloseTo(182.88, 10);
    expect(parseLength('tall', 'cm')).toBeUndefined();
  });
});

describe('numbers for reading', () => {
  it('looks the same in every locale', () => {
    expect(formatDecimal(1234.56, 1)).toBe('1234.6');
    expect(formatDecimal(1234567.8, 1)).toBe('1\u202f234\u202f567.8');
    expect(formatDecimal(-0.04, 1)).toBe('0.0');
    expect(formatDecimal(-0.25, 2)).toBe('−0.25');
  });

  it('reads a point or a comma, and nothing else', () => {
    expect(parseDecimal(' 1,5 ')).toBe(1.5);
    expect(parseDecimal('.5')).toBe(0.5);
    expect(parseDecimal('−0.3')).toBe(-0.3);
    for (const unreadable of ['', '.', '1.2.3', '1e3', '1 000'])
      expect(parseDecimal(unreadable)).toBeUndefined();
  });

  it('rounds to a step without a stray binary digit', () => {
    expect(roundTo(0.29, 0.1)).toBe(0.3);
    expect(roundTo(55, 10)).toBe(60);
    expect(roundTo(-55, 10)).toBe(-60);
    expect(Object.is(roundTo(-0.2, 1), 0)).toBe(true);
  });
});
