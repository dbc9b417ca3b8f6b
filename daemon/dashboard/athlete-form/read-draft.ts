import { athleteSchema, phaseSchema } from '@platewright/core/records/athlete.ts';
import type { FieldsOf } from '@platewright/core/records/kinds.ts';
import { setUpDefaults } from '@platewright/core/targets/defaults.ts';
import { proteinRates } from '@platewright/core/targets/protein.ts';
import { parseDecimal } from '@platewright/core/units/decimal.ts';
import { lengthUnit, parseLength } from '@platewright/core/units/length.ts';
import { parseBodyMass } from '@platewright/core/units/mass.ts';
import type * as z from 'zod/mini';
import { type AthleteDraft, type PhaseDraft, plain } from './draft.ts';

type Wrong<D> = Partial<Record<keyof D, string>>;

/** What could be read of a draft: the fields when all is right, else null and what is wrong at each field. */
export interface Reading<D, T> {
  fields: T | null;
  wrong: Wrong<D>;
}

/** Reads the athlete as typed; `timeZone` is where the browser is. */
export function readAthlete(
  draft: AthleteDraft,
  timeZone: string,
  rolloverHour: number = setUpDefaults.rolloverHour,
): Reading<AthleteDraft, FieldsOf<'athlete'>> {
  const fat = draft.fatPercent.trim();
  const typed = {
    name: draft.name,
    sex: draft.sex,
    birthYear: parseDecimal(draft.birthYear),
    heightCm: parseLength(draft.height, lengthUnit(draft.massUnit)),
    startMassKg: parseBodyMass(draft.mass, draft.massUnit),
    ...(fat && { fatPercent: parseDecimal(fat) ?? Number.NaN }),
    massUnit: draft.massUnit,
    energyUnit: draft.energyUnit,
    ...{ timeZone, rolloverHour },
    meals: draft.meals,
    wake: draft.wake,
    sleep: draft.sleep,
    trainingTime: draft.trainingTime,
    training: draft.training,
    proteinGPerKg: proteinRate(draft.proteinGPerKg),
    fatGPerKg: parseDecimal(draft.fatGPerKg),
    cautions: draft.cautions,
  };
  const parsed = athleteSchema.safeParse(typed);
  if (parsed.success) return { fields: parsed.data, wrong: {} };
  return { fields: null, wrong: wrongAt(parsed.error, athleteWords) };
}

/** Words for each field that could not be read. */
interface Words<D> {
  field: string;
  draftField: keyof D;
  words: string;
}

function wrongAt<D>({ issues }: z.core.$ZodError, known: readonly Words<D>[]): Wrong<D> {
  const at = new Set(issues.map((issue) => String(issue.path[0])));
  const wrong: Wrong<D> = {};
  for (const { field, draftField, words } of known) if (at.has(field)) wrong[draftField] = words;
  return wrong;
}

/** The practice's rate has more digits than it shows; typed as shown it still means itself. */
function proteinRate(text: string): number | undefined {
  return text === plain(proteinRates.practice, 2) ? proteinRates.practice : parseDecimal(text);
}

const athleteWords: readonly Words<AthleteDraft>[] = [
  { field: 'name', draftField: 'name', words: 'Type a name.' },
  { field: 'sex', draftField: 'sex', words: 'Choose one: the energy equations differ.' },
  { field: 'birthYear', draftField: 'birthYear', words: 'Type a year such as 1990.' },
  { field: 'heightCm', draftField: 'height', words: 'Type a height such as 178 cm or 5 ft 10 in.' },
  { field: 'startMassKg', draftField: 'mass', words: 'Type a body mass from 25 to 350 kg (55 to 770 lb).' },
  {
    field: 'fatPercent',
    draftField: 'fatPercent',
    words: 'Type a measured % from 2 to 70, or leave it empty.',
  },
  { field: 'wake', draftField: 'wake', words: 'Type a time.' },
  { field: 'sleep', draftField: 'sleep', words: 'Type a time.' },
  { field: 'trainingTime', draftField: 'trainingTime', words: 'Type a time.' },
  { field: 'training', draftField: 'training', words: 'Put at least one day into the cycle.' },
  { field: 'proteinGPerKg', draftField: 'proteinGPerKg', words: 'Type a rate from 0.6 to 4.5 g/kg.' },
  { field: 'fatGPerKg', draftField: 'fatGPerKg', words: 'Type a rate from 0.4 to 2.5 g/kg.' },
];

/** Reads a phase as typed. */
export function readPhase(draft: PhaseDraft): Reading<PhaseDraft, FieldsOf<'phase'>> {
  const startMark = draft.startMark.trim();
  const fields = {
    from: draft.from,
    aim: draft.aim,
    pacePercentPerWeek: parseDecimal(draft.pace),
    bandLow: parseDecimal(draft.bandLow),
    bandHigh: parseDecimal(draft.bandHigh),
    ...(draft.contestDate && { contestDate: draft.contestDate }),
    ...(startMark && { startMarkG: parseDecimal(startMark) ?? Number.NaN }),
  };
  const parsed = phaseSchema.safeParse(fields);
  if (!parsed.success) return { fields: null, wrong: wrongAt(parsed.error, phaseWords) };
  const { bandLow, bandHigh, pacePercentPerWeek: pace } = parsed.data;
  if (bandLow >= bandHigh)
    return { fields: null, wrong: { bandHigh: 'The high end must be above the low end.' } };
  if (pace < bandLow || pace > bandHigh)
    return { fields: null, wrong: { pace: 'The pace must lie in its band.' } };
  return { fields: parsed.data, wrong: {} };
}

const phaseWords: readonly Words<PhaseDraft>[] = [
  { field: 'from', draftField: 'from', words: 'Choose a date.' },
  { field: 'pacePercentPerWeek', draftField: 'pace', words: 'Type a pace from −2 to 2 % a week.' },
  { field: 'bandLow', draftField: 'bandLow', words: 'Type a pace from −2 to 2 % a week.' },
  { field: 'bandHigh', draftField: 'bandHigh', words: 'Type a pace from −2 to 2 % a week.' },
  { field: 'contestDate', draftField: 'contestDate', words: 'Choose a date, or leave it empty.' },
  { field: 'startMarkG', draftField: 'startMark', words: 'Type grams a day, or leave it empty.' },
];
