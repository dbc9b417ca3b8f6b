import { JoinChoice } from '../pairing/join-choice.tsx';
import { PairForm } from '../pairing/pair-form.tsx';
import { openOptionsToPair } from '../platform/open-options.ts';
import type { Note } from '../replica/notes.ts';

/** Before this browser is paired. */
export function UnpairedScreen({ choice }: { choice: Note<'choice'> | null }) {
  return (
    <main class="alone">
      <h1>{choice === null ? 'Pair this browser' : 'Another store'}</h1>
      {choice !== null ? (
        <JoinChoice choice={choice} />
      ) : (
        // A question about a permission closes a popup, so hosts beyond this machine are asked for on the options page.
        <PairForm
          allow={async (_pattern, typed) => {
            openOptionsToPair(typed);
            return 'Go on in the tab that was opened: there the browser can ask you.';
          }}
        />
      )}
    </main>
  );
}
