import { phaseSchema } from '@platewright/core/records/athlete.ts';
import type { FieldsOf } from '@platewright/core/records/kinds.ts';
import { mostMarkG } from '@platewright/core/records/limits.ts';
import { parseDecimalIn } from '@platewright/core/units/decimal.ts';
import type { PhaseDraft } from './draft.ts';
import { type Reading, type Words, type Wrong, wrongAt } from './read-draft.ts';

/** Reads a phase as typed. */
export function readPhase(draft: PhaseDraft): Reading<PhaseDraft, FieldsOf<'phase'>> {
  const startMark = draft.startMark.trim();
  const fields = {
    from: draft.from,
    aim: draft.aim,
    pacePercentPerWeek: parseDecimalIn(draft.pace, '%'),
    bandLow: parseDecimalIn(draft.bandLow, '%'),
    bandHigh: parseDecimalIn(draft.bandHigh, '%'),
    ...(draft.contestDate && { contestDate: draft.contestDate }),
    ...(startMark && { startMarkG: parseDecimalIn(startMark, 'g') ?? Number.NaN }),
  };
  const parsed = phaseSchema.safeParse(fields);
  if (!parsed.success) return { fields: null, wrong: wrongAt(parsed.error, phaseWords) };
  const wrong = contradiction(parsed.data);
  return wrong === null ? { fields: parsed.data, wrong: {} } : { fields: null, wrong };
}

/** What of a phase can be read and can't be meant; null when it all goes together. */
function contradiction(phase: FieldsOf<'phase'>): Wrong<PhaseDraft> | null {
  const { aim, from, contestDate, bandLow, bandHigh, pacePercentPerWeek: pace, startMarkG = 0 } = phase;
  if (aim === 'pre-contest' && pace >= 0)
    return { pace: 'Pre-contest is a loss: type it with a minus, such as −0.7.' };
  if (aim === 'off-season' && pace < 0) return { pace: 'Off-season is a gain: choose Pre-contest to lose.' };
  if (bandLow >= bandHigh) return { bandHigh: 'The high end must be above the low end.' };
  if (pace < bandLow || pace > bandHigh) return { pace: 'The pace must lie in its band.' };
  // For another aim the form may not show it.
  if (aim === 'pre-contest' && contestDate !== undefined && contestDate < from)
    return { contestDate: 'The contest must not come before the phase starts.' };
  return startMarkG > mostMarkG ? { startMark: startMarkWords } : null;
}

const startMarkWords = `Type grams a day, up to ${mostMarkG}, or leave it empty.`;

const phaseWords: readonly Words<PhaseDraft>[] = [
  { field: 'from', draftField: 'from', words: 'Choose a date.' },
  { field: 'pacePercentPerWeek', draftField: 'pace', words: 'Type a pace from −2 to 2 % a week.' },
  { field: 'bandLow', draftField: 'bandLow', words: 'Type a pace from −2 to 2 % a week.' },
  { field: 'bandHigh', draftField: 'bandHigh', words: 'Type a pace from −2 to 2 % a week.' },
  { field: 'contestDate', draftField: 'contestDate', words: 'Choose a date, or leave it empty.' },
  { field: 'startMarkG', draftField: 'startMark', words: startMarkWords },
];
