import type { PairingCode } from '@platewright/core/protocol/devices.ts';
import { useState } from 'preact/hooks';
import { newPairingCode } from '../../api/session.ts';
import { ProblemNote } from '../../shell/problem-note.tsx';
import { useSubmit } from '../../state/use-submit.ts';
import { formatInstant } from './format-instant.ts';

/** A fresh code, shown big enough to be read across a kitchen. */
export function PairAnother() {
  const [code, setCode] = useState<PairingCode | null>(null);
  const { busy, problem, run } = useSubmit();
  const fetchCode = () => void run(async () => setCode(await newPairingCode()));
  return (
    <div class="stack">
      {code ? (
        <>
          <p class="code" aria-live="polite">
            {code.code}
          </p>
          <p class="soft">
            Type it on the other device. It works once, until {formatInstant(code.expiresAt)}. In the
            extension it goes with the address {location.origin}.
          </p>
        </>
      ) : (
        <p class="soft">
          Get a code here, and type it on the other device: in the extension under Pairing, or on this address
          in another browser.
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
