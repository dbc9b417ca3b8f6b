import { gramsFigure } from '@platewright/core/ui/number.ts';
import type { CallRow } from '@platewright/core/views/week-types.ts';

/** A decision in words: `Accepted: up to 540 g`. */
export function decisionWords({ verdict, decision, proposedG, markG }: CallRow): string {
  const proposed = `${gramsFigure(proposedG)} g`;
  const call = {
    up: `up to ${proposed}`,
    down: `down to ${proposed}`,
    hold: `hold at ${proposed}`,
    'not-enough': 'not enough to say',
  }[verdict];
  switch (decision) {
    case 'accepted':
      return `Accepted: ${call}`;
    case 'declined':
      return `Declined: ${call}`;
    case 'changed':
      return `Set to ${gramsFigure(markG)} g instead of ${call}`;
  }
}
