import type { WeeklyCall } from '@platewright/core/call/output.ts';
import { paceFigure } from '@platewright/core/ui/number.ts';
import { formatDecimal, formatSigned } from '@platewright/core/units/decimal.ts';
import { estimatedEnergyIn } from '@platewright/core/units/energy.ts';
import { bodyMassIn } from '@platewright/core/units/mass.ts';
import type { Units } from '@platewright/core/units/reader.ts';
import { Fact, Facts } from '../../shell/facts.tsx';

/** The numbers under the two sentences, each with its interval. */
export function CallFacts({ call, units }: { call: WeeklyCall; units: Units }) {
  const { pace, maintenanceKcal } = call;
  const energy = (kcal: number) => formatDecimal(estimatedEnergyIn(kcal, units.energy));
  const change = (kg: number) => formatSigned(bodyMassIn(kg, units.mass), 1);
  return (
    <Facts>
      {pace && (
        <>
          <Fact
            name="Pace, last 14 days"
            figure={paceFigure(pace.meanPercentPerWeek)}
            unit="% a week"
            beside={`90 %: ${paceFigure(pace.interval90.low)} to ${paceFigure(pace.interval90.high)}`}
            aim={`aim ${paceFigure(pace.aimPercentPerWeek)}, band ${paceFigure(pace.band.low)} to ${paceFigure(pace.band.high)}`}
          />
          <Fact
            name="To expect at the mark in force"
            figure={paceFigure(pace.expectedAtMark.mean)}
            unit="% a week"
            beside={`90 %: ${paceFigure(pace.expectedAtMark.interval90.low)} to ${paceFigure(pace.expectedAtMark.interval90.high)}`}
            aim={`chance in the band ${percent(pace.probabilityInside)}, below ${percent(pace.probabilityBelow)}, above ${percent(pace.probabilityAbove)}`}
          />
        </>
      )}
      {maintenanceKcal && (
        <Fact
          name="Maintenance"
          figure={energy(maintenanceKcal.mean)}
          unit={units.energy}
          beside={`90 %: ${energy(maintenanceKcal.interval90.low)} to ${energy(maintenanceKcal.interval90.high)}`}
        />
      )}
      {pace && (
        <Fact
          name="Water in the scale’s change"
          figure={change(pace.waterKg.mean)}
          unit={units.mass}
          beside={`90 %: ${change(pace.waterKg.interval90.low)} to ${change(pace.waterKg.interval90.high)}`}
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
