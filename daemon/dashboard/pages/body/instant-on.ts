/** The instant to keep with a reading of a date: now for today, the morning of that date for another. */
export function instantOn(date: string, today: string): number {
  return date === today ? Date.now() : new Date(`${date}T07:00:00`).getTime();
}
