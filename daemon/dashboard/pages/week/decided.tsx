import { gramsFigure } from '@platewright/core/ui/number.ts';
import type { CallRow } from '@platewright/core/views/week-types.ts';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { removal } from '../../api/edits.ts';
import { useKeepPlace } from '../../shell/keep-place.ts';
import { Writing } from '../../shell/writing.tsx';
import { useNotice } from '../../state/notice.tsx';
import { decisionWords } from './decision-words.ts';

interface DecidedProps {
  decision: CallRow;
  athlete: string;
  /** On this page, a moment ago. */
  justMade: boolean;
}

/** A decision that was made, with the way to take it back. */
export function Decided({ decision, athlete, justMade }: DecidedProps) {
  const { act } = useNotice();
  const id = `call-${decision.date}`;
  const back = useKeepPlace<HTMLButtonElement>();
  const line = useRef<HTMLParagraphElement>(null);
  useLayoutEffect(() => {
    // The button that was pressed is gone: what came in its place takes the focus.
    if (document.activeElement === document.body && justMade) line.current?.focus();
  }, []);
  return (
    <div class="decide">
      <p ref={line} tabIndex={-1}>
        <b>{decisionWords(decision)}.</b> The mark is set to{' '}
        <span class="aim">{gramsFigure(decision.markG)} g</span> of carbohydrate a day.
      </p>
      <Writing>
        <button
          ref={back}
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
