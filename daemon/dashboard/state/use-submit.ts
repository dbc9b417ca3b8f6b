import type { Problem } from '@platewright/core/protocol/records.ts';
import { useRef, useState } from 'preact/hooks';
import { newId } from '../api/edits.ts';
import { problemOf, problemOfForm } from '../api/request.ts';

export interface Submit {
  busy: boolean;
  problem: Problem | null;
  /** Runs the work; what was typed stays when it fails. */
  run: (work: () => Promise<void>) => Promise<boolean>;
  /**
   * Id of the n-th new record of this form, the same until a run succeeds: when the daemon stored a form and its answer was
   * lost, sending it again must not make a second record.
   */
  idOf: (n?: number) => string;
}

/** The state of sending a form; not `typed`: of a press, which leaves nothing to keep. */
export function useSubmit({ typed = true } = {}): Submit {
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<Problem | null>(null);
  const ids = useRef<string[]>([]);
  const idOf = (n = 0) => {
    ids.current[n] ??= newId();
    return ids.current[n];
  };
  const run = async (work: () => Promise<void>) => {
    if (busy) return false;
    setBusy(true);
    try {
      await work();
      setProblem(null);
      ids.current = [];
      return true;
    } catch (error) {
      setProblem(typed ? problemOfForm(error) : problemOf(error));
      return false;
    } finally {
      setBusy(false);
    }
  };
  return { busy, problem, run, idOf };
}
