import type { PairingCode, Rights } from '@platewright/core/protocol/devices.ts';
import { isOwner } from '@platewright/core/protocol/rights.ts';
import { useState } from 'preact/hooks';
import { newPairingCode } from '../../api/session.ts';
import { Choice } from '../../forms/choice.tsx';
import { Select } from '../../forms/select.tsx';
import { ProblemNote } from '../../shell/problem-note.tsx';
import { useAthlete } from '../../state/athlete.tsx';
import { useSubmit } from '../../state/use-submit.ts';
import { formatInstant } from './format-instant.ts';

const ALL = '';

/** A fresh code with the rights it gives, shown big enough to be read across a kitchen. */
export function PairAnother() {
  const { session } = useAthlete();
  const [code, setCode] = useState<PairingCode | null>(null);
  const [athlete, setAthlete] = useState(ALL);
  const [access, setAccess] = useState<Rights['access']>('write');
  const { busy, problem, run } = useSubmit({ typed: false });
  const rights = { athlete: athlete === ALL ? null : athlete, access };
  const fetchCode = () => void run(async () => setCode(await newPairingCode(rights)));
  if (!isOwner(session.rights)) return <p class="soft">Codes come from a device of the owner.</p>;
  // A code keeps the rights it was made with, so another choice takes it out of sight.
  const choosing =
    <T,>(set: (value: T) => void) =>
    (value: T) => {
      set(value);
      setCode(null);
    };
  return (
    <div class="stack">
      {code ? (
        <>
          <p class="code" aria-live="polite">
            {code.code}
          </p>
          <p class="soft">
            Type it on the other device. It works once, until {formatInstant(code.expiresAt)}. In the
            extension it goes with the address {document.baseURI.replace(/\/?(#.*)?$/, '')}.
          </p>
        </>
      ) : (
        <p class="soft">
          Get a code here, and type it on the other device: in the extension under Pairing, or on this address
          in another browser.
        </p>
      )}
      <Select
        label="Whose records"
        value={athlete}
        options={[
          { value: ALL, label: 'all athletes' },
          ...session.athletes.map(({ id, name }) => ({ value: id, label: name })),
        ]}
        onChoice={choosing(setAthlete)}
      />
      <Choice
        legend="It may"
        value={access}
        options={[
          { value: 'write', label: 'look and write' },
          { value: 'read', label: 'look only' },
        ]}
        onChoice={choosing(setAccess)}
      />
      {['127.0.0.1', 'localhost'].includes(location.hostname) && (
        <p class="hint">
          A phone or another machine reaches the daemon only once it runs with “npm start -- --lan”.
        </p>
      )}
      {problem && <ProblemNote problem={problem} />}
      <div>
        <button type="button" class={code ? 'button' : 'button first'} disabled={busy} onClick={fetchCode}>
          {code ? 'Another code' : 'Show a pairing code'}
        </button>
      </div>
    </div>
  );
}
