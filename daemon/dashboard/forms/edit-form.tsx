import type { ComponentChildren } from 'preact';
import { ProblemNote } from '../shell/problem-note.tsx';
import type { Submit } from '../state/use-submit.ts';
import { Form } from './form.tsx';

interface EditFormProps {
  /** What is saved: `the phase`. */
  what: string;
  submit: Submit;
  save: () => void;
  /** Whether it can be saved as it stands. */
  ready: boolean;
  close: () => void;
  children: ComponentChildren;
}

/** A new record or a change to one, which is saved or left. */
export function EditForm({ what, submit, save, ready, close, children }: EditFormProps) {
  return (
    <Form class="stack" noValidate opened save={save}>
      {children}
      {submit.problem && <ProblemNote problem={submit.problem} />}
      <div class="buttons">
        <button type="submit" class="button first" disabled={submit.busy || !ready}>
          {submit.busy ? 'Saving…' : `Save ${what}`}
        </button>
        <button type="button" class="button" onClick={close}>
          Leave it
        </button>
      </div>
    </Form>
  );
}
