import type { WeeklyCall } from '@platewright/core/call/output.ts';
import { paceFigure } from '@platewright/core/ui/number.ts';
import { formatDecimal, formatSigned } from '@platewright/core/units/decimal.ts';
import { estimatedEnergyIn } from '@platewright/core/units/energy.ts';
import { bodyMassIn } from '@platewright/core/units/mass.ts';
import type { Units } from '@platewright/core/units/reader.ts';
import { Fact, Facts } from '../../shell/facts.tsx';
import { range, range90 } from '../../shell/range.ts';

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
            beside={range90(pace, paceFigure)}
            aim={`aim ${paceFigure(pace.aimPercentPerWeek)}, band ${range(pace.band, paceFigure)}`}
          />
          <Fact
            name="To expect at the mark in force"
            figure={paceFigure(pace.expectedAtMark.mean)}
            unit="% a week"
            beside={range90(pace.expectedAtMark, paceFigure)}
            aim={`chance in the band ${percent(pace.probabilityInside)}, below ${percent(pace.probabilityBelow)}, above ${percent(pace.probabilityAbove)}`}
          />
        </>
      )}
      {maintenanceKcal && (
        <Fact
          name="Maintenance"
          figure={energy(maintenanceKcal.mean)}
          unit={units.energy}
          beside={range90(maintenanceKcal, energy)}
        />
      )}
      {pace && (
        <Fact
          name="Water in the scale’s change"
          figure={change(pace.waterKg.mean)}
          unit={units.mass}
          beside={range90(pace.waterKg, change)}
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
