import type { Estimate } from '@platewright/core/trend/estimate.ts';

type Figure = (value: number) => string;

/** Both ends of an interval or a band, without a unit: `81.2 to 82.4`. */
export function range({ low, high }: { low: number; high: number }, figure: Figure): string {
  return `${figure(low)} to ${figure(high)}`;
}

/** The interval of an estimate, with how sure it is: `90 %: 81.2 to 82.4`. */
export function range90({ interval90 }: Pick<Estimate, 'interval90'>, figure: Figure): string {
  return `90 %: ${range(interval90, figure)}`;
}
