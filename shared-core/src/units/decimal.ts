const thinSpace = '\u202f';

/**
 * A number with a fixed count of decimals and a point, the same in every locale. From five digits on the whole part
 * is grouped by thin spaces (NIST SP 811, 10.5.3); a negative number gets a true minus sign, and never shows −0.
 */
export function formatDecimal(value: number, decimals = 0): string {
  const [whole = '', fraction] = Math.abs(value).toFixed(decimals).split('.');
  const grouped = whole.length < 5 ? whole : whole.replace(/(?<=\d)(?=(?:\d{3})+$)/g, thinSpace);
  const digits = fraction === undefined ? grouped : `${grouped}.${fraction}`;
  return value < 0 && /[1-9]/.test(digits) ? `−${digits}` : digits;
}

/** A number with its sign always shown, except for zero: `+0.3`, `−1`. */
export function formatSigned(value: number, decimals: number): string {
  const text = formatDecimal(value, decimals);
  return value > 0 && /[1-9]/.test(text) ? `+${text}` : text;
}

/** A typed decimal, `82.4` or `82,4`, as a number; undefined when the text is anything else. */
export function parseDecimal(text: string): number | undefined {
  const match = /^\s*([-−+]?)(\d+(?:[.,]\d*)?|[.,]\d+)\s*$/.exec(text);
  if (!match?.[2]) return undefined;
  const magnitude = Number(match[2].replace(',', '.'));
  return match[1] === '-' || match[1] === '−' ? -magnitude : magnitude;
}

/** Whether a typed number may have decimals or thousands: `1.500` and `1,500 g` are 1.5 to some and 1500 to others. */
export function hasTwoWays(text: string): boolean {
  return /^\s*[1-9]\d{0,2}[.,]\d{3}(?![\d.,])/.test(text);
}

/** A typed decimal with or without the unit that stands beside its field: `420`, `420 g` or `420 G` for `g`. */
export function parseDecimalIn(text: string, unit: string): number | undefined {
  const typed = text.trim();
  const ends = typed.toLowerCase().endsWith(unit.toLowerCase());
  return parseDecimal(ends ? typed.slice(0, -unit.length) : typed);
}

/** The same for an amount that may be a thousand and more: undefined also when it can be read in two ways. */
export function parseAmountIn(text: string, unit: string): number | undefined {
  return hasTwoWays(text) ? undefined : parseDecimalIn(text, unit);
}

/** What to do about a number that can be read in two ways; undefined for any other. */
export function twoWaysWords(text: string): string | undefined {
  const [typed] = /[\d.,]+/.exec(text) ?? [];
  if (typed === undefined || !hasTwoWays(text)) return undefined;
  return `Type ${typed.replace(/[.,]/, '')} or ${Number(typed.replace(',', '.'))}: ${typed} can be read in two ways.`;
}

/** Text such as `180 lb` cut into its number and its unit, lower case; the unit is empty when none was typed. */
export function parseQuantity(text: string): { value: number; unit: string } | undefined {
  const match = /^\s*([-−+]?[\d.,]+)\s*([a-z]*)\.?\s*$/i.exec(text);
  const value = parseDecimal(match?.[1] ?? '');
  return value === undefined ? undefined : { value, unit: (match?.[2] ?? '').toLowerCase() };
}
