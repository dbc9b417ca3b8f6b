/** A figure of ours beside that of a named reference, both measured in one run. */
export interface Compared {
  what: string;
  unit: string;
  ours: number;
  reference: string;
  theirs: number;
}

/** Prints figures as a table; the last column is ours divided by theirs. */
export function printTable(rows: readonly Compared[]): void {
  const cells = rows.map(({ what, unit, ours, reference, theirs }) => [
    what,
    `${figure(ours)} ${unit}`,
    reference,
    `${figure(theirs)} ${unit}`,
    figure(ours / theirs),
  ]);
  const head = ['what', 'ours', 'reference', 'its figure', 'ours ÷ its'];
  const widths = head.map((_, column) =>
    Math.max(...[head, ...cells].map((row) => row[column]?.length ?? 0)),
  );
  for (const row of [head, ...cells]) {
    const left = row.map((cell, column) =>
      column % 2 === 0 && column < 4 ? cell.padEnd(widths[column] ?? 0) : cell.padStart(widths[column] ?? 0),
    );
    console.log(left.join('  '));
  }
}

/** Three digits that count. */
function figure(value: number): string {
  return Math.abs(value) >= 100 ? value.toFixed(0) : String(Number(value.toPrecision(3)));
}

/** The middle of some times. */
export function median(times: readonly number[]): number {
  return times.toSorted((a, b) => a - b)[Math.floor(times.length / 2)] ?? Number.NaN;
}
