function formatter(options: Intl.DateTimeFormatOptions): (date: string) => string {
  const format = new Intl.DateTimeFormat('en-GB', { ...options, timeZone: 'UTC' });
  return (date) => format.format(new Date(`${date}T00:00:00Z`));
}

/** An ISO date as `3 Mar`. */
export const formatDay = formatter({ day: 'numeric', month: 'short' });
/** An ISO date as `3 Mar 2025`. */
export const formatDayOfYear = formatter({ day: 'numeric', month: 'short', year: 'numeric' });
/** An ISO date as `Mon 3 Mar`. */
export const formatWeekday = formatter({ weekday: 'short', day: 'numeric', month: 'short' });
/** An ISO date as `Monday 3 March`. */
export const formatLongDay = formatter({ weekday: 'long', day: 'numeric', month: 'long' });
/** An ISO date as `Mar`. */
export const formatMonth = formatter({ month: 'short' });
