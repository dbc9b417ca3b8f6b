import { CODE_WORDS, hasCodeForm } from '@platewright/core/protocol/code.ts';
import { deviceName } from '@platewright/core/ui/device-name.ts';
import { useState } from 'preact/hooks';
import { pair } from '../../api/session.ts';
import { Field } from '../../forms/field.tsx';
import { Form } from '../../forms/form.tsx';
import { Mark } from '../../shell/mark.tsx';
import { Page, type PageProps } from '../../shell/page.tsx';
import { ProblemNote } from '../../shell/problem-note.tsx';
import { useSubmit } from '../../state/use-submit.ts';

/**
 * Before this browser is paired: the one field for the code. A code that came in the address waits there for a press, because
 * any page can open this one with a code of its own.
 */
export function PairPage({ code, paired }: { code: string | null; paired: () => Promise<void> }) {
  const [typed, setTyped] = useState(code ?? '');
  const [name, setName] = useState(() => deviceName(navigator.userAgent));
  const [check, setCheck] = useState<string | null>(null);
  const [wrong, setWrong] = useState<string>();
  const { busy, problem, run } = useSubmit();
  const send = () => {
    const formed = hasCodeForm(typed);
    setWrong(formed ? undefined : CODE_WORDS);
    if (!formed) return;
    void run(async () => {
      const shown = await pair(typed.trim(), name.trim() || 'Browser');
      setCheck(shown);
      if (shown === null) await paired();
    });
  };

  if (check !== null) return <Compare check={check} done={paired} />;
  return (
    <Alone
      title="Pair this browser"
      lead="Your records are on a daemon of your own. It lets in only devices that were paired."
    >
      <Form class="stack" save={send}>
        <Field
          label="Pairing code"
          value={typed}
          onText={setTyped}
          hint={
            code === null
              ? 'The daemon printed it when it started, and the command that makes a new one. Devices on a paired browser makes one too.'
              : `It came with the link. Go on only if your daemon showed you that link, and ${location.host} is its address.`
          }
          wrong={wrong}
          autocomplete="off"
          spellcheck={false}
          required
        />
        {location.protocol === 'https:' && (
          <p class="hint">
            Did this browser warn of the certificate? It is your daemon’s own. Look at it beside the address
            bar before you go on: its SHA-256 fingerprint must be the one in the daemon’s terminal.
          </p>
        )}
        <Field label="Name of this device" value={name} onText={setName} maxLength={120} />
        {problem && <ProblemNote problem={problem} />}
        <button type="submit" class="button first" disabled={busy || typed.trim() === ''}>
          {busy ? 'Pairing…' : 'Pair this browser'}
        </button>
      </Form>
    </Alone>
  );
}

/** Both ends show the same check when they speak of the same device and the same daemon. */
function Compare({ check, done }: { check: string; done: () => Promise<void> }) {
  return (
    <Alone
      title="Paired"
      lead="Compare this check with the one in the daemon’s terminal or on its Devices page."
    >
      <div class="stack">
        <p class="code">{check}</p>
        <p class="soft">
          Are they not the same? Then someone stands in between: take this device’s key back there, and pair
          again.
        </p>
        <div>
          <button type="button" class="button first" onClick={() => void done()}>
            They are the same
          </button>
        </div>
      </div>
    </Alone>
  );
}

/** A page without the way to others, under the product's name. */
function Alone(page: PageProps) {
  return (
    <div class="alone">
      <header class="brand">
        <Mark /> Platewright
      </header>
      <Page {...page} />
    </div>
  );
}
