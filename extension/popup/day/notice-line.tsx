import type { Notice } from '../state/use-actions.ts';

/** What was last done, said to a screen reader too, with the way back. */
export function NoticeLine({ notice, undo }: { notice: Notice | null; undo: () => void }) {
  return (
    <div class="notice" role="status">
      {notice !== null && (
        <>
          <span>{notice.text}</span>
          {notice.undoable && (
            <button type="button" class="link" onClick={undo}>
              Undo
            </button>
          )}
        </>
      )}
    </div>
  );
}
