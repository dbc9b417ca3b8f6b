import { BASE32 } from './check.ts';

/** Said where what was typed has not the form of a pairing code. */
export const CODE_WORDS =
  'A pairing code is eight letters and digits, such as ABCD-2345. Type the one that the daemon printed.';

/** With what people mistake for each other, which the daemon puts right. */
const FORM = new RegExp(`^[${BASE32}OIL]{8}$`);

/** Whether a text has the form of a pairing code: what has not would only use up a try. */
export function hasCodeForm(typed: string): boolean {
  return FORM.test(typed.toUpperCase().replace(/[\s-]/g, ''));
}
