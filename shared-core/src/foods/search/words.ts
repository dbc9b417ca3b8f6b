/** Letters that no accent can be taken off, with what is typed for them. */
const spelledOut: Readonly<Record<string, string>> = {
  ß: 'ss',
  æ: 'ae',
  œ: 'oe',
  ø: 'o',
  ł: 'l',
  đ: 'd',
  ı: 'i',
};

/**
 * The words of a text as typed, in lower case, without accents and apostrophes, so that `Crème` and `creme` are the same.
 * What is neither letter nor digit only separates them.
 */
export function words(text: string): string[] {
  const lower = text.toLowerCase();
  // Most names are plain ASCII, and normalising every one would take longer than the rest of the index.
  if (!/[^ -&(-~]/.test(lower)) return lower.match(/[a-z0-9]+/g) ?? [];
  return fold(lower).match(/[\p{L}\p{N}]+/gu) ?? [];
}

function fold(lower: string): string {
  return lower
    .normalize('NFKD')
    .replace(/\p{M}+|['’]/gu, '')
    .replace(/[ßæœøłđı]/g, (letter) => spelledOut[letter] ?? letter);
}

/**
 * The form that singular and plural share: `berry` and `berries` are both `berri`, `potato` and `potatoes` both
 * `potato`. Not a word to show. Words of up to three letters stay whole.
 */
export function stem(word: string): string {
  let form = word;
  if (form.length > 3 && form.endsWith('s') && !form.endsWith('ss')) form = form.slice(0, -1);
  if (form.length > 3 && form.endsWith('e')) form = form.slice(0, -1);
  return form.length > 3 && form.endsWith('y') ? `${form.slice(0, -1)}i` : form;
}

/** The stems of the words of a text. */
export function stems(text: string): string[] {
  return words(text).map(stem);
}

/** What a food is called before its cut and state: `Chicken breast` of `Chicken breast, roasted`. */
export function headOf(name: string): string {
  const comma = name.indexOf(',');
  return comma > 0 ? name.slice(0, comma) : name;
}
