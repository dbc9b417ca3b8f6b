import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';

interface ChoiceProps<T extends string> {
  legend: ComponentChildren;
  value: T | '';
  options: readonly { value: T; label: ComponentChildren }[];
  onChoice: (value: T) => void;
  hint?: ComponentChildren;
  wrong?: string | undefined;
}

/** One of a few, all in sight. */
export function Choice<T extends string>({ legend, value, options, onChoice, hint, wrong }: ChoiceProps<T>) {
  const name = useId();
  return (
    <fieldset class="field">
      <legend>{legend}</legend>
      <div class="choice">
        {options.map((option) => (
          <label key={option.value}>
            <input
              type="radio"
              name={name}
              value={option.value}
              checked={option.value === value}
              onChange={() => onChoice(option.value)}
            />
            {option.label}
          </label>
        ))}
      </div>
      {hint && <p class="hint">{hint}</p>}
      {wrong && <p class="wrong">{wrong}</p>}
    </fieldset>
  );
}
