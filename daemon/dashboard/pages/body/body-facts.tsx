import { massFigure, paceFigure } from '@platewright/core/ui/number.ts';
import { formatDecimal, formatSigned } from '@platewright/core/units/decimal.ts';
import { bodyMassIn } from '@platewright/core/units/mass.ts';
import type { BodyView } from '@platewright/core/views/body-types.ts';
import { Fact, Facts } from '../../shell/facts.tsx';

/** Where the body stands, in one row of figures, each with its interval. */
export function BodyFacts({ body }: { body: BodyView }) {
  const { pace, monthKg, fat, fatFreeIndex, units } = body;
  const line = body.points.at(-1)?.lineKg;
  const mass = (kg: number) => massFigure(kg, units.mass);
  const change = (kg: number) => formatSigned(bodyMassIn(kg, units.mass), 1);
  return (
    <Facts>
      {line && (
        <Fact
          name="Bodyweight line"
          figure={mass(line.mean)}
          unit={units.mass}
          beside={`90 %: ${mass(line.interval90.low)} to ${mass(line.interval90.high)}`}
        />
      )}
      {pace && (
        <Fact
          name="Pace, last 14 days"
          figure={paceFigure(pace.meanPercentPerWeek)}
          unit="% a week"
          beside={`90 %: ${paceFigure(pace.interval90.low)} to ${paceFigure(pace.interval90.high)}`}
          aim={`band ${paceFigure(pace.band.low)} to ${paceFigure(pace.band.high)}`}
        />
      )}
      {monthKg && (
        <Fact
          name="Last 30 days"
          figure={change(monthKg.mean)}
          unit={units.mass}
          beside={`90 %: ${change(monthKg.interval90.low)} to ${change(monthKg.interval90.high)}`}
        />
      )}
      {fat && (
        <Fact
          name="Body fat"
          figure={formatDecimal(fat.percent)}
          unit="%"
          beside={`± ${formatDecimal(fat.errorPercent, 1)}, ${fat.method}`}
        />
      )}
      {fatFreeIndex && (
        <Fact
          name="Fat-free mass index"
          figure={formatDecimal(fatFreeIndex.normalised, 1)}
          unit="kg/m²"
          beside={`± ${formatDecimal(fatFreeIndex.error, 1)} by the error of fat; normalised to 1.80 m, ${fatFreeIndex.source}; ${formatDecimal(fatFreeIndex.raw, 1)} before`}
        />
      )}
    </Facts>
  );
}
