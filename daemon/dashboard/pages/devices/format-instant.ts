const format = new Intl.DateTimeFormat('en-GB', {
  day: 'numeric',
  month: 'short',
  hour: '2-digit',
  minute: '2-digit',
});

/** An instant in ms as `3 Mar, 14:05`, by the clock of this browser. */
export function formatInstant(ms: number): string {
  return format.format(ms);
}
