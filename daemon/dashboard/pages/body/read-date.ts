import { dateSchema } from '@platewright/core/records/scalars.ts';

/** How dates with slashes are meant: `3/4/2025` is the third of April or the fourth of March. */
export type DayOrder = 'day first' | 'month first';

const months = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];

const slashed = /(?:^|\n)\s*["']?(\d{1,2})\/(\d{1,2})\/\d{4}/g;

/** Whether lines begin with dates with slashes, whose order has to be asked. */
export function hasSlashes(text: string): boolean {
  return text.search(slashed) >= 0;
}

/** The order of the dates with slashes, told by one that has no other; null where each can be read both ways. */
export function orderIn(text: string): DayOrder | null {
  for (const [, first, second] of text.matchAll(slashed)) {
    if (Number(second) > 12) return 'month first';
    if (Number(first) > 12) return 'day first';
  }
  return null;
}

interface FoundDate {
  date: string;
  /** So many characters of the text it takes. */
  length: number;
}

/**
 * The date that a text begins with: `2025-03-01`, `1.3.2025`, `1/3/2025`, `1 Mar 2025`; null when there is none. One with
 * slashes needs the order.
 */
export function readDate(text: string, order: DayOrder | null): FoundDate | null {
  const iso = /^["']?(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})/.exec(text);
  if (iso) return found(iso, iso[1], iso[2], iso[3]);
  const dotted = /^["']?(\d{1,2})\.(\d{1,2})\.(\d{4})/.exec(text);
  if (dotted) return found(dotted, dotted[3], dotted[2], dotted[1]);
  const slash = /^["']?(\d{1,2})\/(\d{1,2})\/(\d{4})/.exec(text);
  if (slash && order !== null) {
    const dayFirst = order === 'day first';
    return found(slash, slash[3], slash[dayFirst ? 2 : 1], slash[dayFirst ? 1 : 2]);
  }
  const worded = /^["']?(\d{1,2})\.?\s+([a-z]{3})[a-z]*\.?,?\s+(\d{4})/i.exec(text);
  const month = months.indexOf(worded?.[2]?.toLowerCase() ?? '');
  return worded && month >= 0 ? found(worded, worded[3], String(month + 1), worded[1]) : null;
}

function found(match: RegExpExecArray, year = '', month = '', day = ''): FoundDate | null {
  const parsed = dateSchema.safeParse(`${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`);
  return parsed.success ? { date: parsed.data, length: match[0].length } : null;
}
