import type { ComponentChildren } from 'preact';
import type { Loaded } from '../state/use-view.ts';
import { ProblemNote } from './problem-note.tsx';

/** What was loaded, or why it is not there. An old value stays in sight under the problem. */
export function Shown<T>({
  loaded,
  children,
}: {
  loaded: Loaded<T>;
  children: (value: T) => ComponentChildren;
}) {
  const { value, problem, reload } = loaded;
  return (
    <>
      {problem && <ProblemNote problem={problem} again={() => void reload()} />}
      {value !== null && children(value)}
      {value === null && !problem && (
        <p class="soft waiting" role="status">
          Reading…
        </p>
      )}
    </>
  );
}
