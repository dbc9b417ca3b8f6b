import { askWorker } from '../platform/messages.ts';
import type { Note } from '../replica/notes.ts';

/** Asked when the browser was paired with another store than the one whose records are here. */
export function JoinChoice({ choice }: { choice: Note<'choice'> }) {
  const { waiting, mayBeSent } = choice;
  return (
    <section class="join-choice">
      <p>
        Paired. This browser still holds records of another store
        {waiting > 0 && `, with ${waiting === 1 ? '1 change' : `${waiting} changes`} that no daemon has`}.
        What shall become of them?
      </p>
      <div class="buttons">
        {mayBeSent && (
          <button type="button" class="button" onClick={() => void askWorker('join', 'send')}>
            Send them to this store
          </button>
        )}
        <button type="button" class="button" onClick={() => void askWorker('join', 'replace')}>
          Erase them here, show this store
        </button>
        <button type="button" class="button" onClick={() => void askWorker('unpair', null)}>
          Keep them, unpair again
        </button>
      </div>
    </section>
  );
}
