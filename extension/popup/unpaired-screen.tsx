import { JoinChoice } from '../pairing/join-choice.tsx';
import { PairForm } from '../pairing/pair-form.tsx';
import { openOptions } from '../platform/open-options.ts';
import type { Note } from '../replica/notes.ts';

/** Before this browser is paired. */
export function UnpairedScreen({ choice }: { choice: Note<'choice'> | null }) {
  return (
    <main class="alone">
      <h1>Pair this browser</h1>
      {choice !== null ? (
        <JoinChoice choice={choice} />
      ) : (
        <>
          <p>
            Your records are kept by a daemon of your own. Once paired, you log here even while it is off.
          </p>
          {/* A question about a permission closes a popup, so hosts beyond this machine are asked for on the options page. */}
          <PairForm
            allow={async () => {
              openOptions();
              return false;
            }}
          />
        </>
      )}
    </main>
  );
}
