import type { AthleteDraft } from './draft.ts';

/** What every part of the athlete's form gets: the draft, the way to change it, and what is wrong at each field. */
export interface AthletePartProps {
  draft: AthleteDraft;
  set: (change: Partial<AthleteDraft>) => void;
  wrong: Partial<Record<keyof AthleteDraft, string>>;
}

/** The same of a draft that has some texts. */
interface Texts<K extends string> {
  draft: Record<K, string>;
  set: (change: Record<string, string>) => void;
  wrong: Partial<Record<K, string>>;
}

/** What ties a field to a text of a draft. */
export function tied<K extends string>({ draft, set, wrong }: Texts<NoInfer<K>>, key: K) {
  return { value: draft[key], onText: (text: string) => set({ [key]: text }), wrong: wrong[key] };
}
