import { useState } from 'preact/hooks';
import { askWorker } from '../platform/messages.ts';
import { permissionFor, readPairText } from './read-pair-text.ts';

interface PairFormProps {
  /** Gets the permission to reach a host beyond this machine; false when the person says no. */
  allow: (pattern: string) => Promise<boolean>;
}

/** One field for the code the daemon printed, with its address in front where that is not the usual one. */
export function PairForm({ allow }: PairFormProps) {
  const [typed, setTyped] = useState('');
  const [wrong, setWrong] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);

  const send = async () => {
    const asked = readPairText(typed);
    if (asked === null) {
      setWrong('Type the code that the daemon printed, such as ABCD-EFGH.');
      return;
    }
    const pattern = permissionFor(asked.address);
    // Asked before anything is awaited: a permission is only granted in answer to a press.
    if (pattern !== null && !(await allow(pattern))) {
      setWrong('Without that permission this browser can’t reach the daemon.');
      return;
    }
    setBusy(true);
    const end = await askWorker('pair', asked);
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
      <div class="field">
        <label for="pair-text">Pairing code</label>
        <input
          id="pair-text"
          class="input"
          value={typed}
          onInput={({ currentTarget }) => setTyped(currentTarget.value)}
          aria-invalid={wrong !== null}
          aria-describedby="pair-hint"
          autocomplete="off"
          spellcheck={false}
          autofocus
        />
        <p id="pair-hint" class="hint">
          The daemon prints it when it starts. Is it not at 127.0.0.1:8787? Then type its address in front:
          192.168.1.20:8789 ABCD-EFGH.
        </p>
        {wrong !== null && (
          <p class="wrong" role="alert">
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
