import type { Problem } from '@platewright/core/protocol/records.ts';
import { useState } from 'preact/hooks';
import { problemOf } from '../api/request.ts';

interface Submit {
  busy: boolean;
  problem: Problem | null;
  /** Runs the work; what was typed stays when it fails. */
  run: (work: () => Promise<void>) => Promise<boolean>;
}

/** The state of sending a form. */
export function useSubmit(): Submit {
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<Problem | null>(null);
  const run = async (work: () => Promise<void>) => {
    if (busy) return false;
    setBusy(true);
    try {
      await work();
      setProblem(null);
      return true;
    } catch (error) {
      setProblem(problemOf(error));
      return false;
    } finally {
      setBusy(false);
    }
  };
  return { busy, problem, run };
}
