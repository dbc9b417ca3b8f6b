import type { ComponentChildren, InputHTMLAttributes } from 'preact';
import { useId } from 'preact/hooks';

interface FieldProps {
  type?: 'text' | 'date' | 'time' | 'search';
  inputMode?: 'text' | 'decimal' | 'numeric';
  placeholder?: string;
  autocomplete?: 'off' | 'bday-year';
  spellcheck?: boolean;
  required?: boolean;
  maxLength?: number;
  /** Latest date that can be chosen. */
  max?: string;
  label: ComponentChildren;
  value: string;
  onText: (text: string) => void;
  onPaste?: (event: ClipboardEvent) => void;
  /** Shown after the field: kg, g, cm. */
  unit?: string | undefined;
  hint?: ComponentChildren;
  /** What is wrong and what to do; empty or absent when it is right. */
  wrong?: string | undefined;
}

/** One line to type in, with its label, its unit, and what is wrong with it. */
export function Field({ label, value, onText, unit, hint, wrong, type, ...rest }: FieldProps) {
  const id = useId();
  const described = [hint && `${id}-hint`, wrong && `${id}-wrong`].filter(Boolean).join(' ');
  const input = inputOf(type, {
    ...rest,
    id,
    class: 'input',
    value,
    'aria-invalid': Boolean(wrong),
    ...(described && { 'aria-describedby': described }),
    onInput: (event) => onText(event.currentTarget.value),
  });
  return (
    <div class="field">
      <label for={id}>{label}</label>
      {unit ? (
        <span class="with-unit">
          {input}
          <span>{unit}</span>
        </span>
      ) : (
        input
      )}
      {hint && (
        <p class="hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      {wrong && (
        <p class="wrong" id={`${id}-wrong`}>
          {wrong}
        </p>
      )}
    </div>
  );
}

type Given = Omit<InputHTMLAttributes, 'type' | 'role' | 'list'>;

/** The element, with its type written out because the roles it may have depend on it. */
function inputOf(type: FieldProps['type'], given: Given) {
  switch (type) {
    case 'date':
      return <input {...given} type="date" />;
    case 'time':
      return <input {...given} type="time" />;
    case 'search':
      return <input {...given} type="search" />;
    default:
      return <input {...given} type="text" />;
  }
}
