import type { AthleteDraft } from './draft.ts';

type Wrong = Partial<Record<keyof AthleteDraft, string>>;

/** What is wrong, for showing: a field that is still empty is not blamed before the first try to save. */
export function shownWrong(draft: AthleteDraft, wrong: Wrong, tried: boolean): Wrong {
  if (tried) return wrong;
  const shown: Wrong = { ...wrong };
  for (const field of ['name', 'sex', 'birthYear', 'height', 'mass', 'fatPercent'] as const) {
    if (draft[field] === '') delete shown[field];
    // Half a year typed is not a wrong year yet.
    if (field === 'birthYear' && draft.birthYear.length < 4) delete shown[field];
  }
  return shown;
}
