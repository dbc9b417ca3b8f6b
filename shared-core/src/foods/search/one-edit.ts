/**
 * Whether `typed` is one edit away from `word` or, unless it must be `whole`, from a beginning of it: a letter wrong, too
 * many or missing, or two neighbours swapped (Damerau 1964 found four of five misspellings to be one of these; from
 * memory). The first letter may be the wrong one.
 */
export function isOneEditFrom(typed: string, word: string, whole: boolean): boolean {
  let at = 0;
  while (at < typed.length && typed.charCodeAt(at) === word.charCodeAt(at)) at++;
  const swapped =
    typed.charCodeAt(at) === word.charCodeAt(at + 1) && typed.charCodeAt(at + 1) === word.charCodeAt(at);
  return (
    goesOn(typed, at + 1, word, at + 1, whole) ||
    goesOn(typed, at + 1, word, at, whole) ||
    goesOn(typed, at, word, at + 1, whole) ||
    (swapped && goesOn(typed, at + 2, word, at + 2, whole))
  );
}

/** Whether `typed` goes on as `word` does, each from its own place. Compares in place: the whole vocabulary goes through it. */
function goesOn(typed: string, from: number, word: string, at: number, whole: boolean): boolean {
  const shift = at - from;
  let next = from;
  while (next < typed.length && typed.charCodeAt(next) === word.charCodeAt(next + shift)) next++;
  return next >= typed.length && (!whole || next + shift === word.length);
}
