import { formatDayOfYear } from '@platewright/core/ui/format-date.ts';
import { gramsFigure } from '@platewright/core/ui/number.ts';
import type { CallRow } from '@platewright/core/views/week-types.ts';
import { useState } from 'preact/hooks';
import { decisionWords } from './decision-words.ts';

const firstRows = 8;

/** The decisions before this one, newest first. */
export function History({ calls }: { calls: readonly CallRow[] }) {
  const [all, setAll] = useState(false);
  return (
    <>
      <ul class="rows">
        {(all ? calls : calls.slice(0, firstRows)).map((call) => (
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
      {calls.length > firstRows && (
        <button type="button" class="button small" onClick={() => setAll(!all)}>
          {all ? 'Show fewer' : `Show all ${calls.length}`}
        </button>
      )}
    </>
  );
}
