import type { ComponentChildren } from 'preact';
import { ProblemNote } from '../shell/problem-note.tsx';
import type { Submit } from '../state/use-submit.ts';
import { Form } from './form.tsx';

interface RecordFormProps {
  submit: Submit;
  save: () => void;
  /** Whether all that is needed is typed and right. */
  ready: boolean;
  /** Words of the button. */
  button: string;
  /** It is what the page is mostly opened for. */
  first?: boolean;
  children: ComponentChildren;
  below?: ComponentChildren;
}

/** One record in a row of fields, with the button at its end. */
export function RecordForm({ submit, save, ready, button, first, children, below }: RecordFormProps) {
  return (
    <Form class="fields" save={save}>
      {children}
      <div class="field-button">
        <button type="submit" class={first ? 'button first' : 'button'} disabled={submit.busy || !ready}>
          {button}
        </button>
      </div>
      {below}
      {submit.problem && <ProblemNote problem={submit.problem} />}
    </Form>
  );
}
