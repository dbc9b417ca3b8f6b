import { formatDay } from '@platewright/core/ui/format-date.ts';
import { formatDecimal, formatSigned } from '@platewright/core/units/decimal.ts';
import { type BodyMassUnit, bodyMassIn } from '@platewright/core/units/mass.ts';
import type { LiftView } from '@platewright/core/views/lifts-types.ts';
import { Fact, Facts } from '../../shell/facts.tsx';
import { range90 } from '../../shell/range.ts';
import { formatSet } from './load.ts';

/** Where a lift stands, where it is heading, and the set to beat. */
export function LiftFacts({ lift, unit }: { lift: LiftView; unit: BodyMassUnit }) {
  const { repMax, trend, nextMark } = lift;
  const mass = (kg: number) => formatDecimal(bodyMassIn(kg, unit));
  const percent = (value: number) => formatSigned(value, 1);
  return (
    <Facts>
      {nextMark && (
        <Fact name="Next mark" figure={formatSet(nextMark, unit)} unit="" beside={asks(nextMark)} />
      )}
      {repMax && (
        <Fact
          name="Rep max"
          figure={mass(repMax.kg.mean)}
          unit={unit}
          beside={
            repMax.of.repetitions === 1 && !trend
              ? `lifted on ${formatDay(repMax.of.date)}`
              : range90(repMax.kg, mass)
          }
        />
      )}
      {repMax && (
        <Fact
          name="Trend, 12 weeks"
          figure={trend ? percent(trend.percentPerMonth.mean) : 'not yet'}
          unit={trend ? '% a month' : ''}
          beside={trend ? range90(trend.percentPerMonth, percent) : 'from four sessions over two weeks on'}
        />
      )}
    </Facts>
  );
}

function asks({ by, risePercent }: NonNullable<LiftView['nextMark']>): string {
  const what = by === 'plate' ? 'the smallest step' : 'one more repetition';
  return risePercent === null ? what : `${what}, ${formatDecimal(risePercent, 1)} % more`;
}
