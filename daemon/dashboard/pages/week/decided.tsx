import { gramsFigure } from '@platewright/core/ui/number.ts';
import type { CallRow } from '@platewright/core/views/week-types.ts';
import { removal } from '../../api/edits.ts';
import { Writing } from '../../shell/writing.tsx';
import { useNotice } from '../../state/notice.tsx';
import { decisionWords } from './decision-words.ts';

/** A decision that was made, with the way to take it back. */
export function Decided({ decision, athlete }: { decision: CallRow; athlete: string }) {
  const { act } = useNotice();
  const id = `call-${decision.date}`;
  return (
    <div class="decide">
      <p>
        <b>{decisionWords(decision)}.</b> The mark in force is{' '}
        <span class="aim">{gramsFigure(decision.markG)} g</span> of carbohydrate a day.
      </p>
      <Writing>
        <button
          type="button"
          class="button small"
          onClick={() =>
            void act([removal('weekly-call', athlete, id, true)], 'The decision is taken back.', [
              removal('weekly-call', athlete, id, false),
            ])
          }
        >
          Take it back
        </button>
      </Writing>
    </div>
  );
}
