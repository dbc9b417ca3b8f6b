import { massFigure, paceFigure } from '@platewright/core/ui/number.ts';
import { formatDecimal, formatSigned } from '@platewright/core/units/decimal.ts';
import { bodyMassIn } from '@platewright/core/units/mass.ts';
import type { BodyView } from '@platewright/core/views/body-types.ts';
import { EstimatedFact, Fact, Facts } from '../../shell/facts.tsx';
import { range } from '../../shell/range.ts';

/** Where the body stands, in one row of figures, each with its interval. */
export function BodyFacts({ body }: { body: BodyView }) {
  const { pace, fourWeeksKg, fat, fatFreeIndex, units } = body;
  const line = body.points.at(-1)?.lineKg;
  const mass = (kg: number) => massFigure(kg, units.mass);
  const change = (kg: number) => formatSigned(bodyMassIn(kg, units.mass), 1);
  return (
    <Facts>
      {line && <EstimatedFact name="Bodyweight line" of={line} figure={mass} unit={units.mass} />}
      {pace && (
        <EstimatedFact
          name="Pace, last 14 days"
          of={{ mean: pace.meanPercentPerWeek, interval90: pace.interval90 }}
          figure={paceFigure}
          unit="% a week"
          aim={`band ${range(pace.band, paceFigure)}`}
        />
      )}
      {fourWeeksKg && (
        <EstimatedFact name="Change, last 28 days" of={fourWeeksKg} figure={change} unit={units.mass} />
      )}
      {fat && (
        <Fact
          name="Body fat"
          figure={formatDecimal(fat.percent)}
          unit="%"
          beside={`± ${formatDecimal(fat.errorPercent)}, ${fat.method}`}
        />
      )}
      {fatFreeIndex && (
        <Fact
          name="Fat-free mass index"
          figure={formatDecimal(fatFreeIndex.normalised, 1)}
          unit="kg/m²"
          beside={`± ${formatDecimal(fatFreeIndex.error, 1)}; ${formatDecimal(fatFreeIndex.raw, 1)} before it was set to 1.80\u00a0m, ${fatFreeIndex.source}`}
        />
      )}
    </Facts>
  );
}
