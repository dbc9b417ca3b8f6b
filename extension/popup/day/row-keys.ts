const ROW = '.entry';

/**
 * Keys on a list of entries: the arrows go to the same control of the next or previous entry; a key that a button of the
 * entry names in `data-key` presses it.
 */
export function rowKeys(event: KeyboardEvent): void {
  const { target, key } = event;
  if (!(target instanceof HTMLButtonElement) || event.ctrlKey || event.altKey || event.metaKey) return;
  const row = target.closest<HTMLElement>(ROW);
  if (row === null) return;
  const named = [...row.querySelectorAll<HTMLButtonElement>('[data-key]')].find(
    (button) => button.dataset.key === key,
  );
  // A key that is held removes one entry, not one after the other; Enter presses a button as long as it is held.
  const pressesOnce = named !== undefined || key === 'Enter';
  if (event.repeat && pressesOnce) event.preventDefault();
  else if (named !== undefined) named.click();
  else if (key === 'ArrowDown') stepFocus(target, 1);
  else if (key === 'ArrowUp') stepFocus(target, -1);
  else return;
  event.preventDefault();
}

/** Moves the focus off an entry that is about to go: to the next one, the one before, or the typed line. */
export function leaveRow(button: HTMLButtonElement | null): void {
  if (button !== null && (stepFocus(button, 1) || stepFocus(button, -1))) return;
  document.getElementById('typed-line')?.focus();
}

function stepFocus(button: HTMLButtonElement, step: 1 | -1): boolean {
  const row = button.closest<HTMLElement>(ROW);
  if (row === null) return false;
  const rows = [...document.querySelectorAll<HTMLElement>(ROW)];
  const place = [...row.querySelectorAll('button')].indexOf(button);
  const next = rows[rows.indexOf(row) + step]?.querySelectorAll('button')[place];
  next?.focus();
  return next !== undefined;
}
