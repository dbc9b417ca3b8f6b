/** More than a body gains or loses between two weigh-ins, and less than a wrong unit makes (common practice, no source). */
const FAR_OFF = 0.15;

/** Whether a body mass lies so far off the latest one that it should be asked about once. */
export function isFarOff(kg: number, latestKg: number): boolean {
  return Math.abs(kg - latestKg) > FAR_OFF * latestKg;
}
