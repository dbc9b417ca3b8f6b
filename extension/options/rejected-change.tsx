import { useState } from 'preact/hooks';
import { askWorker, type Decision } from '../platform/messages.ts';
import type { OutboxRow } from '../replica/rows.ts';
import { changeWords, editableFields, editedFields } from './change-draft.ts';

/** A change that the daemon refused: why, and what the person can do about it. */
export function RejectedChange({ row }: { row: OutboxRow }) {
  const [typed, setTyped] = useState<Record<string, string> | null>(null);
  const [wrong, setWrong] = useState('');
  const { change, order, reason } = row;
  const about = `change-${order}`;

  const decide = async (decision: Decision) => {
    const end = await askWorker('decide', decision);
    setWrong(end.ok ? '' : end.reason);
  };
  const save = async () => {
    const fields = editedFields(change.fields, typed ?? {});
    if (fields === null) {
      setWrong('A number can’t be read. Write it with digits alone, such as 120.5.');
      return;
    }
    await decide({ order, how: 'amend', fields });
  };

  return (
    <li class="change">
      <p id={about}>{changeWords(change.kind, change.fields)}</p>
      <p class="wrong">{reason}</p>
      {wrong !== '' && (
        <p class="wrong" role="alert">
          {wrong}
        </p>
      )}
      {typed === null ? (
        <div class="buttons">
          <button type="button" class="button small" aria-describedby={about} onClick={() => setTyped({})}>
            Edit
          </button>
          <button
            type="button"
            class="button small"
            aria-describedby={about}
            onClick={() => void decide({ order, how: 'resend' })}
          >
            Send again
          </button>
          <button
            type="button"
            class="button small"
            aria-describedby={about}
            onClick={() => void decide({ order, how: 'let-go' })}
          >
            Let go
          </button>
        </div>
      ) : (
        <form
          class="change-form"
          onSubmit={(event) => {
            event.preventDefault();
            void save();
          }}
        >
          {editableFields(change.fields).map(({ field, label, text }) => (
            <div key={field} class="field">
              <label for={`field-${order}-${field}`}>{label}</label>
              <input
                id={`field-${order}-${field}`}
                class="input"
                value={typed[field] ?? text}
                onInput={({ currentTarget }) => setTyped({ ...typed, [field]: currentTarget.value })}
              />
            </div>
          ))}
          <div class="buttons">
            <button type="submit" class="button first small">
              Save and send
            </button>
            <button
              type="button"
              class="button small"
              onClick={() => {
                setTyped(null);
                setWrong('');
              }}
            >
              Leave it
            </button>
          </div>
        </form>
      )}
    </li>
  );
}
