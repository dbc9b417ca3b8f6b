import type { AthleteDraft } from './draft.ts';

/** What every part of the athlete's form gets. */
export interface AthletePartProps {
  draft: AthleteDraft;
  set: (change: Partial<AthleteDraft>) => void;
  wrong: Partial<Record<keyof AthleteDraft, string>>;
}
