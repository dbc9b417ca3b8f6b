import type { WeeklyCall } from '@platewright/core/call/output.ts';
import { energyKcal } from '@platewright/core/foods/atwater.ts';
import { availabilityLevels } from '@platewright/core/maintenance/energy-availability.ts';
import { gramsFigure, paceFigure } from '@platewright/core/ui/number.ts';
import { formatEnergy } from '@platewright/core/units/energy.ts';
import { formatEnergyPerMass } from '@platewright/core/units/reader.ts';
import type { WeekView } from '@platewright/core/views/week-types.ts';
import { fanAt } from './fan-at.ts';

/** What a day and the coming weeks would be at a mark, and whether the call itself would ever go there. */
export function AtMark({ week, call, markG }: { week: WeekView; call: WeeklyCall; markG: number }) {
  const { planAfter, units, whatIf } = week;
  const pace = fanAt(whatIf, markG)?.pacePercentPerWeek.mean;
  const guardG = call.evidence.find(({ code }) => code === 'energy-availability')?.numbers.floorMarkG;
  return (
    <div class="wide stack" aria-live="polite">
      <p class="soft small">
        {planAfter &&
          `A day then has ${formatEnergy(energyKcal({ ...planAfter, carbohydrateG: markG }), units.energy)}. `}
        {pace === undefined
          ? 'It lies beyond what the forecast reaches.'
          : `Pace to expect in weeks 2 to 4: ${paceFigure(pace)} % a week.`}
      </p>
      {guardG !== undefined && markG < guardG && (
        <div class="caution">
          <p>
            Under {gramsFigure(Math.ceil(guardG))} g the plan leaves less than{' '}
            {formatEnergyPerMass(availabilityLevels.low, units)} of fat-free mass a day. No call goes there:
            see a doctor or dietitian before you do.
          </p>
        </div>
      )}
    </div>
  );
}
