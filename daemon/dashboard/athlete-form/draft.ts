import type { Caution, PhaseAim, Training } from '@platewright/core/records/athlete.ts';
import type { Athlete, Phase } from '@platewright/core/records/kinds.ts';
import { defaultPaces } from '@platewright/core/season/phase-in-force.ts';
import { setUpDefaults } from '@platewright/core/targets/defaults.ts';
import { formatDecimal } from '@platewright/core/units/decimal.ts';
import type { EnergyUnit } from '@platewright/core/units/energy.ts';
import { cmPerInch, lengthUnit, parseLength } from '@platewright/core/units/length.ts';
import { type BodyMassUnit, bodyMassIn, parseBodyMass } from '@platewright/core/units/mass.ts';

/** The athlete as typed, before it is known whether it can be read. */
export interface AthleteDraft {
  name: string;
  massUnit: BodyMassUnit;
  energyUnit: EnergyUnit;
  sex: 'female' | 'male' | '';
  birthYear: string;
  height: string;
  mass: string;
  fatPercent: string;
  meals: number;
  wake: string;
  sleep: string;
  trainingTime: string;
  training: Training;
  proteinGPerKg: string;
  fatGPerKg: string;
  cautions: readonly Caution[];
}

/** A phase as typed; paces in % of body mass a week. */
export interface PhaseDraft {
  aim: PhaseAim;
  from: string;
  pace: string;
  bandLow: string;
  bandHigh: string;
  contestDate: string;
  startMark: string;
}

export function emptyAthlete(): AthleteDraft {
  const { meals, wake, sleep, trainingTime, training, proteinGPerKg, fatGPerKg } = setUpDefaults;
  return {
    name: 'Me',
    massUnit: 'kg',
    energyUnit: 'kcal',
    sex: '',
    birthYear: '',
    height: '',
    mass: '',
    fatPercent: '',
    ...{ meals, wake, sleep, trainingTime },
    training: { kind: 'weekdays', days: [...training.days] },
    proteinGPerKg: plain(proteinGPerKg, 2),
    fatGPerKg: plain(fatGPerKg, 2),
    cautions: [],
  };
}

export function draftOfAthlete(athlete: Athlete): AthleteDraft {
  return {
    ...athlete,
    birthYear: String(athlete.birthYear),
    height: heightText(athlete.heightCm, athlete.massUnit),
    mass: massText(athlete.startMassKg, athlete.massUnit),
    fatPercent: athlete.fatPercent === undefined ? '' : plain(athlete.fatPercent, 1),
    proteinGPerKg: plain(athlete.proteinGPerKg, 2),
    fatGPerKg: plain(athlete.fatGPerKg, 2),
  };
}

/** A phase of an aim with the pace that it usually starts with. */
export function draftOfAim(aim: PhaseAim, from: string): PhaseDraft {
  const { pacePercentPerWeek, bandLow, bandHigh } = defaultPaces[aim];
  return {
    aim,
    from,
    pace: plain(pacePercentPerWeek, 2),
    bandLow: plain(bandLow, 2),
    bandHigh: plain(bandHigh, 2),
    contestDate: '',
    startMark: '',
  };
}

export function draftOfPhase(phase: Phase): PhaseDraft {
  return {
    aim: phase.aim,
    from: phase.from,
    pace: plain(phase.pacePercentPerWeek, 2),
    bandLow: plain(phase.bandLow, 2),
    bandHigh: plain(phase.bandHigh, 2),
    contestDate: phase.contestDate ?? '',
    startMark: phase.startMarkG === undefined ? '' : plain(phase.startMarkG, 0),
  };
}

/** The same draft read in other units: what was typed is converted, so that it means the same body. */
export function inMassUnit(draft: AthleteDraft, massUnit: BodyMassUnit): AthleteDraft {
  const kg = parseBodyMass(draft.mass, draft.massUnit);
  const cm = parseLength(draft.height, lengthUnit(draft.massUnit));
  return {
    ...draft,
    massUnit,
    mass: kg === undefined ? draft.mass : massText(kg, massUnit),
    height: cm === undefined ? draft.height : heightText(cm, massUnit),
  };
}

function massText(kg: number, unit: BodyMassUnit): string {
  return plain(bodyMassIn(kg, unit), 1);
}

function heightText(cm: number, unit: BodyMassUnit): string {
  return plain(unit === 'kg' ? cm : cm / cmPerInch, 1);
}

/** A number as it would be typed: no needless zero, a hyphen for minus. */
export function plain(value: number, decimals: number): string {
  const text = formatDecimal(value, decimals).replace('−', '-').replaceAll('\u202f', '');
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}
