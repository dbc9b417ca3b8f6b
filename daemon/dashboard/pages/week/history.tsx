import { formatDayOfYear } from '@platewright/core/ui/format-date.ts';
import { gramsFigure } from '@platewright/core/ui/number.ts';
import type { CallRow } from '@platewright/core/views/week-types.ts';
import { FirstRows } from '../../shell/first-rows.tsx';
import { decisionWords } from './decision-words.ts';

/** The decisions before this one, newest first. */
export function History({ calls }: { calls: readonly CallRow[] }) {
  return (
    <FirstRows rows={calls} most={8}>
      {(shown) => (
        <ul class="rows">
          {shown.map((call) => (
            <li key={call.date}>
              <details>
                <summary class="history-row">
                  <span>{formatDayOfYear(call.date)}</span>
                  <span>{decisionWords(call)}</span>
                  <span class="number wide-only">{gramsFigure(call.markG)} g</span>
                </summary>
                <p class="soft">{call.summary}</p>
              </details>
            </li>
          ))}
        </ul>
      )}
    </FirstRows>
  );
}
