/** Minutes in a day. */
const DAY = 24 * 60;

/** Minutes since midnight of a time of day `HH:MM`. */
export function minutesOf(time: string): number {
  const [hours = '0', minutes = '0'] = time.split(':');
  return Number(hours) * 60 + Number(minutes);
}

/** `HH:MM` of minutes since midnight, also past midnight. */
export function timeOf(minutes: number): string {
  const inDay = ((minutes % DAY) + DAY) % DAY;
  const two = (value: number) => String(value).padStart(2, '0');
  return `${two(Math.floor(inDay / 60))}:${two(inDay % 60)}`;
}

/** Minutes since the date's midnight of a time that falls in the day which starts at `wake`: past 24 h after midnight. */
export function minutesAfterWake(time: string, wake: string): number {
  const minutes = minutesOf(time);
  return minutes < minutesOf(wake) ? minutes + DAY : minutes;
}

/** Minutes since the date's midnight at which the day that starts at `wake` ends; equal times are a whole day apart. */
export function endOfDay(day: { wake: string; sleep: string }): number {
  const sleep = minutesAfterWake(day.sleep, day.wake);
  return day.sleep === day.wake ? sleep + DAY : sleep;
}
