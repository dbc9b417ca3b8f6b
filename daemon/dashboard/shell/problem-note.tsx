import type { Problem } from '@platewright/core/protocol/records.ts';

/** What went wrong and what to do, where it happened. */
export function ProblemNote({ problem, again }: { problem: Problem; again?: () => void }) {
  return (
    <div class="problem" role="alert">
      <p>
        <b>{problem.title}</b> {problem.detail}
      </p>
      {problem.errors?.map((error) => (
        <p key={error.pointer} class="small">
          {error.pointer}: {error.detail}
        </p>
      ))}
      {again && (
        <button type="button" class="button small" onClick={again}>
          Try again
        </button>
      )}
    </div>
  );
}
