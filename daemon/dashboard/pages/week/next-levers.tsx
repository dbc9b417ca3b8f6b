import type { NextLever } from '@platewright/core/call/output.ts';

/** What is next, in order, when the mark stands at its own floor; the athlete picks. */
export function NextLevers({ levers }: { levers: readonly NextLever[] }) {
  if (levers.length === 0) return null;
  return (
    <div class="levers">
      <h3>The mark stands at its floor. Next, in this order:</h3>
      <ol>
        {levers.map((lever) => (
          <li key={lever.code}>{lever.text}</li>
        ))}
      </ol>
    </div>
  );
}
