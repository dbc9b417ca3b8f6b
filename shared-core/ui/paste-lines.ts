/**
 * Pastes several lines into a field of one line as items of a typed line, with commas between: the browser would put
 * blanks there, and a pasted recipe would read as one food.
 */
export function pasteLines(event: ClipboardEvent): void {
  const lines = (event.clipboardData?.getData('text/plain') ?? '')
    .split(/[\r\n]+/)
    .map((line) => line.trim())
    .filter(Boolean);
  if (lines.length < 2) return;
  event.preventDefault();
  // It alone keeps the browser's own undo, and tells the field's listeners.
  document.execCommand('insertText', false, lines.join(', '));
}
