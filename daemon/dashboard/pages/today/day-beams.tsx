import { Beam } from '@platewright/core/ui/beam.tsx';
import { energyFigure } from '@platewright/core/ui/number.ts';
import type { DayView } from '@platewright/core/views/types.ts';

/** The three beams, and energy as a number, since it only follows from them. */
export function DayBeams({ day }: { day: DayView }) {
  const { beams, eaten, targets, units } = day;
  return (
    <section class="beams">
      <h2 class="unseen">Beams of the day</h2>
      <Beam beam={beams.protein} />
      <Beam beam={beams.carbohydrate} />
      <Beam beam={beams.fat} />
      <p class="energy-line">
        <span class="beam-name">Energy</span>
        <span class="beam-eaten">
          <b>{energyFigure(eaten.energyKcal, units.energy)}</b>
          <span class="soft">
            {' '}
            of {energyFigure(targets.energyKcal, units.energy)} {units.energy}
          </span>
        </span>
      </p>
    </section>
  );
}
