/** A stretch of a typed line; `end` is the place after its last character. */
export interface Span {
  text: string;
  start: number;
  end: number;
}

// Quoted text, a decimal comma, or any other character that is no separator.
const part = /(?<![^\s,;+])"(?:[^"]|"")+"(?![^\s,;+])|(?=,\d)(?<=\d|(?:^|[,;+\n])\s*),|[^,;+\n]/g;

/**
 * The stretches between separators (`,` `;` `+` and line ends), blanks included. A comma between digits is decimal; before
 * a digit where no item stands yet, `,5 egg`, it may be, so it belongs to the item.
 */
function stretches(line: string): Span[] {
  const found: Span[] = [];
  let start = 0;
  let end = 0;
  const cut = () => found.push({ text: line.slice(start, end), start, end });
  for (const match of line.matchAll(part)) {
    for (; end < match.index; start = end) {
      cut();
      end++;
    }
    end = match.index + match[0].length;
  }
  for (; end < line.length; start = end) {
    cut();
    end++;
  }
  cut();
  return found;
}

/** The items of a typed line, without blanks around them; empty ones are left out. */
export function itemsOf(line: string): Span[] {
  return stretches(line)
    .map(trimmed)
    .filter(({ text }) => text !== '');
}

/** The item that a caret stands in; empty where none has been begun. */
export function itemAt(line: string, caret: number): Span {
  const all = stretches(line);
  const stretch = all.find(({ end }) => caret <= end) ?? all[all.length - 1];
  return stretch && stretch.text.trim() !== '' ? trimmed(stretch) : { text: '', start: caret, end: caret };
}

function trimmed({ text, start }: Span): Span {
  const from = start + text.length - text.trimStart().length;
  const inner = text.trim();
  return { text: inner, start: from, end: from + inner.length };
}
