/**
 * How far what is in the package may exceed the declared energy: 20 %, 21 CFR 101.9(g)(5). The rule is one-sided and
 * calls a lower content acceptable when reasonable, (g)(6); that the same 20 % is used there is common practice, no source.
 */
export const US_TOLERANCE = 1.2;

/**
 * How far protein, carbohydrate, sugars or fibre may be off, g per 100 g declared. Commission guidance of December 2012,
 * table 1, not binding (figures from memory): below 10 g ±2 g, to 40 g ±20 %, above ±8 g.
 */
export function euGramsTolerance(declared: number): number {
  return tolerance(declared, 2);
}

/** The same for fat: below 10 g ±1.5 g, to 40 g ±20 %, above ±8 g. Energy has no tolerance of its own: it follows. */
export function euFatTolerance(declared: number): number {
  return tolerance(declared, 1.5);
}

function tolerance(declared: number, belowTen: number): number {
  if (declared < 10) return belowTen;
  return declared <= 40 ? declared * 0.2 : 8;
}
