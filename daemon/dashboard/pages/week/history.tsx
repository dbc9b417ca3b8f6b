import { formatDayOfYear } from '@platewright/core/ui/format-date.ts';
import { gramsFigure } from '@platewright/core/ui/number.ts';
import type { CallRow } from '@platewright/core/views/week-types.ts';
import { decisionWords } from './decision-words.ts';

/** The decisions before this one, newest first. */
export function History({ calls }: { calls: readonly CallRow[] }) {
  if (calls.length === 0) return <p class="soft">Your decisions on earlier calls will stand here.</p>;
  return (
    <ul class="rows">
      {calls.map((call) => (
        <li key={call.date}>
          <details>
            <summary class="history-row">
              <span>{formatDayOfYear(call.date)}</span>
              <span>{decisionWords(call)}</span>
              <span class="number">{gramsFigure(call.markG)} g</span>
            </summary>
            <p class="soft">{call.summary}</p>
          </details>
        </li>
      ))}
    </ul>
  );
}
