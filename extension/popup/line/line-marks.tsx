import type { RefObject } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';

interface LineMarksProps {
  text: string;
  faults: readonly { start: number; end: number }[];
  field: RefObject<HTMLInputElement | null>;
}

/** Marks under the words of the line that can't be read. It lies behind the field, in the same type, and scrolls with it. */
export function LineMarks({ text, faults, field }: LineMarksProps) {
  const marks = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const input = field.current;
    if (input === null) return;
    const follow = () => {
      if (marks.current !== null) marks.current.scrollLeft = input.scrollLeft;
    };
    follow();
    input.addEventListener('scroll', follow);
    return () => input.removeEventListener('scroll', follow);
  });
  if (faults.length === 0) return null;
  return (
    <div ref={marks} class="line-marks" aria-hidden="true">
      {faults.map(({ start, end }, i) => (
        <span key={start}>
          {text.slice(faults[i - 1]?.end ?? 0, start)}
          <mark>{text.slice(start, end)}</mark>
        </span>
      ))}
      {text.slice(faults.at(-1)?.end ?? 0)}
    </div>
  );
}
