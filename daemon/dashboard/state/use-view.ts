import type { Problem } from '@platewright/core/protocol/records.ts';
import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import { onChanged } from '../api/live.ts';
import { problemOf } from '../api/request.ts';

export interface Loaded<T> {
  value: T | null;
  problem: Problem | null;
  reload: () => Promise<void>;
}

/**
 * What `load` gives, loaded again whenever the daemon says that something changed. While it loads, and when it fails,
 * the last value stays on the screen. `key` names what is loaded: another key starts afresh.
 */
export function useLoaded<T>(key: string, load: () => Promise<T>): Loaded<T> {
  const [state, setState] = useState<{ key: string; value: T | null; problem: Problem | null }>({
    key,
    value: null,
    problem: null,
  });
  const turn = useRef(0);
  const latest = useRef(load);
  latest.current = load;

  const reload = useCallback(async () => {
    turn.current += 1;
    const mine = turn.current;
    try {
      const value = await latest.current();
      if (mine === turn.current) setState({ key, value, problem: null });
    } catch (error) {
      const problem = problemOf(error);
      if (mine === turn.current) {
        setState((before) => ({ key, value: before.key === key ? before.value : null, problem }));
      }
    }
  }, [key]);

  useEffect(() => {
    void reload();
    return onChanged(() => void reload());
  }, [reload]);

  const current = state.key === key;
  return { value: current ? state.value : null, problem: current ? state.problem : null, reload };
}
