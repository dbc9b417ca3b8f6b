import type { WeeklyCall } from '@platewright/core/call/output.ts';
import { gramsFigure, paceFigure } from '@platewright/core/ui/number.ts';
import { formatDecimal, formatSigned } from '@platewright/core/units/decimal.ts';
import { estimatedEnergyIn } from '@platewright/core/units/energy.ts';
import { bodyMassIn } from '@platewright/core/units/mass.ts';
import type { Units } from '@platewright/core/units/reader.ts';
import { EstimatedFact, Facts } from '../../shell/facts.tsx';
import { range } from '../../shell/range.ts';

/** The numbers under the two sentences, each with its interval. */
export function CallFacts({ call, units }: { call: WeeklyCall; units: Units }) {
  const { pace, maintenanceKcal } = call;
  const energy = (kcal: number) => formatDecimal(estimatedEnergyIn(kcal, units.energy));
  const change = (kg: number) => formatSigned(bodyMassIn(kg, units.mass), 1);
  return (
    <Facts>
      {pace && (
        <>
          <EstimatedFact
            name="Pace, last 14 days"
            of={{ mean: pace.meanPercentPerWeek, interval90: pace.interval90 }}
            figure={paceFigure}
            unit="% a week"
            aim={`aim ${paceFigure(pace.aimPercentPerWeek)}, band ${range(pace.band, paceFigure)}`}
          />
          <EstimatedFact
            name={`To expect at ${gramsFigure(call.markInForceG)} g, coming days`}
            of={pace.expectedAtMark}
            figure={paceFigure}
            unit="% a week"
            aim={`chance in the band ${percent(pace.probabilityInside)}, below ${percent(pace.probabilityBelow)}, above ${percent(pace.probabilityAbove)}`}
          />
        </>
      )}
      {maintenanceKcal && (
        <EstimatedFact name="Maintenance" of={maintenanceKcal} figure={energy} unit={units.energy} />
      )}
      {pace && (
        <EstimatedFact
          name="Water in the scale’s change"
          of={pace.waterKg}
          figure={change}
          unit={units.mass}
        />
      )}
    </Facts>
  );
}

/** A chance for reading: nobody knows it to the percent, and nothing is certain. */
function percent(chance: number): string {
  if (chance < 0.025) return '<\u202f5\u202f%';
  if (chance > 0.975) return '>\u202f95\u202f%';
  return `${Math.round(chance * 20) * 5}\u202f%`;
}
