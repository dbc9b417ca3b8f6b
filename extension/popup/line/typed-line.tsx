import { pasteLines } from '@platewright/core/ui/paste-lines.ts';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { LineMarks } from './line-marks.tsx';
import { OPTION_LIST, optionId } from './option-list.tsx';
import type { Option } from './options.ts';
import type { useTypedLine } from './use-typed-line.ts';

interface TypedLineProps {
  line: ReturnType<typeof useTypedLine>;
  /** The meal it logs to, for a screen reader. */
  label: string;
  choose: (option: Option) => void;
}

const FAULTS = 'line-faults';
/** So many are explained at once, so that the list and the foot keep their place; the others are marked in the line. */
const MOST_EXPLAINED = 2;

/** The typed line: a combobox of the WAI-ARIA pattern over `OptionList`. What can't be read is marked in place. */
export function TypedLine({ line, label, choose }: TypedLineProps) {
  const field = useRef<HTMLInputElement>(null);
  const more = line.faults.length - MOST_EXPLAINED;
  useLayoutEffect(() => field.current?.focus(), []);
  useLayoutEffect(() => {
    // Only when the line was changed by choosing or logging: while typing, the field knows better.
    if (field.current !== null && field.current.selectionStart !== line.caret) {
      field.current.setSelectionRange(line.caret, line.caret);
    }
  }, [line.text, line.caret]);

  const onKeyDown = (event: KeyboardEvent) => {
    if (event.isComposing || event.altKey || event.ctrlKey || event.metaKey) return;
    if (event.key === 'ArrowDown') line.point(1);
    else if (event.key === 'ArrowUp') line.point(-1);
    else if (event.key === 'Enter') {
      const option = line.options[line.active];
      if (option === undefined) void line.send();
      else choose(option);
    } else if (event.key !== 'Escape' || !line.escape()) return;
    event.preventDefault();
  };
  const onSelect = () => {
    const { selectionStart, selectionEnd } = field.current ?? {};
    if (selectionStart != null && selectionStart === selectionEnd) line.moveCaret(selectionStart);
  };

  return (
    <div class="line">
      <div class="line-field">
        <LineMarks text={line.text} faults={line.faults} field={field} />
        <input
          ref={field}
          id="typed-line"
          class="input line-input"
          role="combobox"
          aria-label={label}
          aria-autocomplete="list"
          aria-expanded={line.options.length > 0}
          aria-controls={line.options.length > 0 ? OPTION_LIST : undefined}
          aria-activedescendant={line.active >= 0 ? optionId(line.active) : undefined}
          aria-invalid={line.faults.length > 0}
          aria-describedby={FAULTS}
          autocomplete="off"
          spellcheck={false}
          placeholder="200 chicken, 2 eggs + 6 whites, 80g oats"
          value={line.text}
          onInput={({ currentTarget }) =>
            line.type(currentTarget.value, currentTarget.selectionStart ?? currentTarget.value.length)
          }
          onKeyDown={onKeyDown}
          onPaste={pasteLines}
          onSelect={onSelect}
        />
      </div>
      <div id={FAULTS} aria-live="polite">
        {line.faults.slice(0, MOST_EXPLAINED).map((fault) => (
          <p key={fault.start} class="wrong">
            {fault.message}
          </p>
        ))}
        {more > 0 && (
          <p class="wrong">
            {more} more {more === 1 ? 'is' : 'are'} marked in the line.
          </p>
        )}
      </div>
    </div>
  );
}
