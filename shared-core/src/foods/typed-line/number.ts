import { hasTwoWays } from '../../units/decimal.ts';

/** How many, as it was typed. */
export interface Amount {
  value: number;
  /** The same, or what it may be as well: 1500 for the 1.5 of `1,500` and `1.500`, 5 for `,5` at the start of an item. */
  other: number;
}

/** A number found in a text, and where it ends. */
export interface FoundNumber extends Amount {
  end: number;
}

// What follows must not make it part of a word: `2%`, `93/7` and `6"` belong to names of foods.
const boundary = String.raw`(?=\.?(?:\s|$)|[\p{L}×])`;
const fraction = new RegExp(String.raw`(?:(\d+)\s+)?(\d+)[/⁄](\d+)${boundary}`, 'uy');
const vulgar = new RegExp(String.raw`(\d*)\s?([¼-¾⅐-⅞])${boundary}`, 'uy');
const decimal = new RegExp(String.raw`(\d+(?:[.,]\d+)?|[.,]\d+)${boundary}`, 'uy');

/** The number that starts at a place of a text: `80`, `1.5`, `1,5`, `1/2`, `1 1/2`, `½`, `2½`. */
export function numberAt(text: string, at: number): FoundNumber | undefined {
  const split = matchAt(fraction, text, at);
  if (split && Number(split[2]) < Number(split[3])) return found(split, mixed(split[1], split[2], split[3]));
  const sign = matchAt(vulgar, text, at);
  if (sign) {
    const [over, under] = (sign[2] ?? '').normalize('NFKC').split('⁄');
    return found(sign, mixed(sign[1], over, under));
  }
  const plain = matchAt(decimal, text, at);
  if (!plain || (plain[0].startsWith(',') && at > 0)) return undefined;
  const value = Number(plain[0].replace(',', '.'));
  const twoWays = hasTwoWays(plain[0]) || plain[0].startsWith(',');
  return found(plain, value, twoWays ? Number(plain[0].replace(/[.,]/, '')) : value);
}

/** What a sticky pattern finds at just that place. */
export function matchAt(pattern: RegExp, text: string, at: number): RegExpExecArray | null {
  pattern.lastIndex = at;
  return pattern.exec(text);
}

function found(match: RegExpExecArray, value: number, other = value): FoundNumber {
  return { value, other, end: match.index + match[0].length };
}

function mixed(whole = '', over = '', under = ''): number {
  return Number(whole) + Number(over) / Number(under);
}

/** A number as `numberAt` reads it: decimals where a few are enough, or else a fraction such as `1 1/3`. */
export function formatNumber(value: number): string {
  const whole = Math.floor(value);
  for (let under = 3; under < 16 && !Number.isInteger(value * 1000); under++) {
    const over = Math.round((value - whole) * under);
    if (whole + over / under === value) return `${whole > 0 ? `${whole} ` : ''}${over}/${under}`;
  }
  // Twelve digits drop what binary arithmetic adds: 3 × 0.1 is 0.3.
  return String(Number(value.toPrecision(12)));
}
