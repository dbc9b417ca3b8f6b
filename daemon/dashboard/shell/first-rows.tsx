import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';

interface FirstRowsProps<R> {
  rows: readonly R[];
  /** So many stand there until all are asked for. */
  most: number;
  children: (shown: readonly R[]) => ComponentChildren;
}

/** The first of many rows, and the way to all of them. */
export function FirstRows<R>({ rows, most, children }: FirstRowsProps<R>) {
  const [all, setAll] = useState(false);
  return (
    <>
      {children(all ? rows : rows.slice(0, most))}
      {rows.length > most && (
        <button type="button" class="button small more" onClick={() => setAll(!all)}>
          {all ? 'Show fewer' : `Show all ${rows.length}`}
        </button>
      )}
    </>
  );
}
