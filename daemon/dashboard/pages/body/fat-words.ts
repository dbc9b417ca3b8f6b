import { formatDecimal } from '@platewright/core/units/decimal.ts';
import type { CalipersView } from '@platewright/core/views/body-types.ts';

type Found = Omit<NonNullable<CalipersView['fat']>, 'date'>;

/** Body fat with its published error and where it comes from, in one sentence. */
export function fatWords({ percent, errorPercent, method }: Found): string {
  return `Body fat ${formatDecimal(percent, 1)} %, standard error ${formatDecimal(errorPercent, 1)} (${method}).`;
}
