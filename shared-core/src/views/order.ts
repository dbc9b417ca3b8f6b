interface Dated {
  date: string;
  id: string;
}

/** Earlier dates first; of one date in the order of ids, so that no view depends on the order of records. */
export function oldestFirst(a: Dated, b: Dated): number {
  return a.date + a.id < b.date + b.id ? -1 : 1;
}

/** The same turned round. */
export function newestFirst(a: Dated, b: Dated): number {
  return oldestFirst(b, a);
}

/** Earlier instants first, of one instant in the order of ids. */
export function byInstant(a: { at: number; id: string }, b: { at: number; id: string }): number {
  return a.at - b.at || (a.id < b.id ? -1 : 1);
}
