import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { mostEntryG } from '../src/records/limits.ts';
import { parseAmountIn, twoWaysWords } from '../src/units/decimal.ts';
import { roundTo } from '../src/units/round.ts';
import type { EntryView } from '../src/views/types.ts';
import { gramsFigure, weighedFigure } from './number.ts';

interface GramsCellProps {
  entry: Pick<EntryView, 'name' | 'grams' | 'amount'>;
  onGrams?: (grams: number) => void;
}

/** The amount of an entry; pressed, it becomes a field for grams. Enter or leaving saves, Escape keeps the old amount. */
export function GramsCell({ entry, onGrams }: GramsCellProps) {
  const [typed, setTyped] = useState<string | null>(null);
  const field = useRef<HTMLInputElement>(null);
  const button = useRef<HTMLButtonElement>(null);
  /** Ended by a key: the focus goes back to the button, and the field's leaving saves nothing more. */
  const byKey = useRef(false);
  const editing = typed !== null;
  useLayoutEffect(() => {
    if (editing) field.current?.select();
    else if (byKey.current) button.current?.focus();
    byKey.current = false;
  }, [editing]);

  const weighed = `${weighedFigure(entry.grams)} g`;
  const text = entry.amount ? `${entry.amount} · ${weighed}` : weighed;
  const asRead = String(roundTo(entry.grams, entry.grams < 1 ? 0.01 : 0.1));
  if (!onGrams) return <span class="entry-grams">{text}</span>;
  if (typed === null) {
    return (
      <button
        ref={button}
        type="button"
        class="entry-grams link"
        aria-label={`${text} of ${entry.name}, change`}
        onClick={() => setTyped(asRead)}
      >
        {text}
      </button>
    );
  }

  const grams = parseAmountIn(typed, 'g');
  const valid = grams !== undefined && grams > 0 && grams <= mostEntryG;
  const save = () => {
    if (!valid) return;
    // What was only looked at keeps its last digits, and the amount it was typed in.
    if (typed !== asRead) onGrams(grams);
    setTyped(null);
  };
  return (
    <span class="entry-grams with-unit">
      <input
        ref={field}
        class="input"
        inputMode="decimal"
        aria-label={`Grams of ${entry.name}`}
        aria-invalid={!valid}
        value={typed}
        onInput={(event) => setTyped(event.currentTarget.value)}
        onBlur={() => byKey.current || save()}
        onKeyDown={(event) => {
          if (event.key !== 'Enter' && event.key !== 'Escape') return;
          event.stopPropagation();
          event.preventDefault();
          byKey.current = event.key === 'Escape' || valid;
          if (event.key === 'Enter') save();
          else setTyped(null);
        }}
      />
      <span>g</span>
      {!valid && (
        <span class="wrong" role="alert">
          {twoWaysWords(typed) ?? `Type grams above 0, up to ${gramsFigure(mostEntryG)}.`}
        </span>
      )}
    </span>
  );
}
