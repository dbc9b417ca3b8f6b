import type { Problem } from '@platewright/core/protocol/records.ts';
import { useRef, useState } from 'preact/hooks';
import { problemOf, problemOfForm } from '../api/request.ts';
import { idUnder, type UnheardIds, withIds } from './new-ids.ts';

export interface Submit {
  busy: boolean;
  problem: Problem | null;
  /** Runs the work; what was typed stays when it fails. */
  run: (work: () => Promise<void>) => Promise<boolean>;
  /**
   * Ids of new records, the same until a run succeeds: when the daemon stored a form and its answer was lost, sending it
   * again must not make a second record. `idOf` is for a form that is about one thing until it closes, which goes by a name;
   * `withIds` for one that goes on to the next, where only the same again is the same record.
   */
  idOf: (name?: string) => string;
  withIds: <F extends object>(records: readonly F[]) => { id: string; fields: F }[];
}

interface SubmitOptions {
  /** False for a press, which leaves nothing typed to keep. */
  typed?: boolean;
  /** Where ids are kept that outlive the page, as a kept draft does. */
  ids?: UnheardIds;
}

/** The state of sending a form. */
export function useSubmit({ typed = true, ids: kept }: SubmitOptions = {}): Submit {
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<Problem | null>(null);
  const own = useRef<UnheardIds>(new Map());
  const ids = kept ?? own.current;
  const run = async (work: () => Promise<void>) => {
    if (busy) return false;
    setBusy(true);
    try {
      await work();
      setProblem(null);
      ids.clear();
      return true;
    } catch (error) {
      setProblem(typed ? problemOfForm(error) : problemOf(error));
      return false;
    } finally {
      setBusy(false);
    }
  };
  return {
    ...{ busy, problem, run },
    idOf: (name = '') => idUnder(name, ids),
    withIds: (records) => withIds(records, ids),
  };
}
