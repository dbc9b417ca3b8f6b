const MS_PER_DAY = 86_400_000;

/** Days since 1970-01-01 of an ISO date, NaN when it is none. */
export function dayNumber(iso: string): number {
  if (iso.length !== 10 || iso[4] !== '-' || iso[7] !== '-') return Number.NaN;
  const year = digits(iso, 0, 4);
  const month = digits(iso, 5, 7);
  const day = digits(iso, 8, 10);
  const lastOfMonth = month === 2 ? (isLeap(year) ? 29 : 28) : [4, 6, 9, 11].includes(month) ? 30 : 31;
  return month >= 1 && month <= 12 && day >= 1 && day <= lastOfMonth
    ? // Date.UTC takes the years 0 to 99 for those of 1900.
      new Date(0).setUTCFullYear(year, month - 1, day) / MS_PER_DAY
    : Number.NaN;
}

/** Value of the digits from `start` to before `end`, NaN when one is none. */
function digits(text: string, start: number, end: number): number {
  let value = 0;
  for (let i = start; i < end; i++) {
    const digit = text.charCodeAt(i) - 48;
    if (digit < 0 || digit > 9) return Number.NaN;
    value = 10 * value + digit;
  }
  return value;
}

function isLeap(year: number): boolean {
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
}

/** ISO date of a day number. */
export function isoDay(number: number): string {
  return new Date(number * MS_PER_DAY).toISOString().slice(0, 10);
}
