import { athleteSchema } from '@platewright/core/records/athlete.ts';
import type { FieldsOf } from '@platewright/core/records/kinds.ts';
import { limits } from '@platewright/core/records/limits.ts';
import { setUpDefaults } from '@platewright/core/targets/defaults.ts';
import { proteinRates } from '@platewright/core/targets/protein.ts';
import { parseDecimal, parseDecimalIn } from '@platewright/core/units/decimal.ts';
import { lengthUnit, parseLength } from '@platewright/core/units/length.ts';
import { parseBodyMass } from '@platewright/core/units/mass.ts';
import type * as z from 'zod/mini';
import { type AthleteDraft, plain } from './draft.ts';

export type Wrong<D> = Partial<Record<keyof D, string>>;

/** What could be read of a draft: the fields when all is right, else null and what is wrong at each field. */
export interface Reading<D, T> {
  fields: T | null;
  wrong: Wrong<D>;
}

/** Where and when the athlete is set up. */
interface Place {
  today: string;
  timeZone: string;
  rolloverHour?: number;
}

/** Reads the athlete as typed; `timeZone` is where the browser is. */
export function readAthlete(
  draft: AthleteDraft,
  { today, timeZone, rolloverHour = setUpDefaults.rolloverHour }: Place,
): Reading<AthleteDraft, FieldsOf<'athlete'>> {
  const fat = draft.fatPercent.trim();
  const typed = {
    name: draft.name,
    sex: draft.sex,
    birthYear: parseDecimal(draft.birthYear),
    heightCm: parseLength(draft.height, lengthUnit(draft.massUnit)),
    startMassKg: parseBodyMass(draft.mass, draft.massUnit),
    ...(fat && { fatPercent: parseDecimalIn(fat, '%') ?? Number.NaN }),
    massUnit: draft.massUnit,
    energyUnit: draft.energyUnit,
    ...{ timeZone, rolloverHour },
    meals: draft.meals,
    wake: draft.wake,
    sleep: draft.sleep,
    trainingTime: draft.trainingTime,
    training: draft.training,
    proteinGPerKg: proteinRate(draft.proteinGPerKg),
    fatGPerKg: parseDecimalIn(draft.fatGPerKg, 'g/kg'),
    cautions: draft.cautions,
  };
  const parsed = athleteSchema.safeParse(typed);
  const wrong: Wrong<AthleteDraft> = parsed.success ? {} : wrongAt(parsed.error, athleteWords);
  const year = Number(today.slice(0, 4));
  const [first, last] = [year - limits.ageYears.most, year - limits.ageYears.least];
  const born = typed.birthYear ?? Number.NaN;
  if (!Number.isInteger(born) || born < first || born > last)
    wrong.birthYear = `Type a year from ${first} to ${last}, such as 1990.`;
  return parsed.success && !wrong.birthYear ? { fields: parsed.data, wrong } : { fields: null, wrong };
}

/** Words for each field that could not be read. */
export interface Words<D> {
  field: string;
  draftField: keyof D;
  words: string;
}

/** The words for each field that a schema refuses. */
export function wrongAt<D>({ issues }: z.core.$ZodError, known: readonly Words<D>[]): Wrong<D> {
  const at = new Set(issues.map((issue) => String(issue.path[0])));
  const wrong: Wrong<D> = {};
  for (const { field, draftField, words } of known) if (at.has(field)) wrong[draftField] = words;
  return wrong;
}

/** The practice's rate has more digits than it shows; typed as shown it still means itself. */
function proteinRate(text: string): number | undefined {
  return text === plain(proteinRates.practice, 2) ? proteinRates.practice : parseDecimalIn(text, 'g/kg');
}

const athleteWords: readonly Words<AthleteDraft>[] = [
  { field: 'name', draftField: 'name', words: 'Type a name of 1 to 120 letters.' },
  { field: 'sex', draftField: 'sex', words: 'Choose one: the energy equations differ.' },
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
