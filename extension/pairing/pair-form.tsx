import { CODE_WORDS } from '@platewright/core/protocol/code.ts';
import { useState } from 'preact/hooks';
import { askWorker, type PairEnd } from '../platform/messages.ts';
import { permissionFor, readPairText, whyNotTo } from './read-pair-text.ts';

interface PairFormProps {
  /** What is in the field at first. */
  begun?: string;
  /** Asks for the permission to reach a host beyond this machine. Says why there is none; null when there is. */
  allow: (pattern: string, typed: string) => Promise<string | null>;
}

const UNHEARD: PairEnd = {
  state: 'failed',
  detail:
    'The browser stopped the extension’s worker in the middle of pairing. Try again; if the code was used up by it, ask for a new one: npx platewright pair, as the daemon’s terminal words it.',
};

/** One field for the code the daemon printed, with its address in front where that is not the usual one. */
export function PairForm({ begun = '', allow }: PairFormProps) {
  const [typed, setTyped] = useState(begun);
  const [wrong, setWrong] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const asked = readPairText(typed);
  const inClear = asked === null ? null : whyNotTo(asked.address);
  const pattern = asked === null || inClear !== null ? null : permissionFor(asked.address);

  const send = async () => {
    if (asked === null || inClear !== null) {
      setWrong(inClear ?? CODE_WORDS);
      return;
    }
    // Asked before anything is awaited: a permission is only granted in answer to a press.
    const whyNot = pattern === null ? null : await allow(pattern, typed);
    if (whyNot !== null) {
      setWrong(whyNot);
      return;
    }
    setBusy(true);
    const end = await askWorker('pair', asked).catch(() => UNHEARD);
    setBusy(false);
    setWrong(end.state === 'failed' ? end.detail : null);
  };

  return (
    <form
      class="pair-form"
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
    >
      <p>Your records are kept by a daemon of your own. Once paired, you log here even while it is off.</p>
      <div class="field">
        <label for="pair-text">Pairing code</label>
        <input
          id="pair-text"
          class="input"
          value={typed}
          onInput={({ currentTarget }) => setTyped(currentTarget.value)}
          aria-invalid={wrong !== null}
          aria-describedby="pair-hint pair-wrong"
          autocomplete="off"
          spellcheck={false}
          autofocus
        />
        <p id="pair-hint" class="hint">
          The daemon prints it when it starts. Is it not at 127.0.0.1:8787? Then type its address in front:
          192.168.1.20:8789 ABCD-2345.
        </p>
        {asked !== null && pattern !== null && (
          <p class="hint">
            The browser will ask whether Platewright may reach {new URL(asked.address).hostname}: allow it.
          </p>
        )}
        {wrong !== null && (
          <p id="pair-wrong" class="wrong" role="alert">
            {wrong}
          </p>
        )}
      </div>
      <button type="submit" class="button first" disabled={busy}>
        {busy ? 'Pairing…' : 'Pair'}
      </button>
    </form>
  );
}
