import type { NextLever } from '@platewright/core/call/output.ts';
import { hrefOf } from '../../router.ts';

/** What is next, in order, when the mark stands at its own floor; the athlete picks. */
export function NextLevers({ levers }: { levers: readonly NextLever[] }) {
  if (levers.length === 0) return null;
  return (
    <div class="levers">
      <h3>The mark stands low. Next, in this order:</h3>
      <ol>
        {levers.map((lever) => (
          <li key={lever.code}>{lever.text}</li>
        ))}
      </ol>
      <p class="soft small">
        Pick one or none: fat and protein are set with the athlete’s targets, pace and date with the phase, on
        the <a href={hrefOf('plan')}>Plan page</a>.
      </p>
    </div>
  );
}
