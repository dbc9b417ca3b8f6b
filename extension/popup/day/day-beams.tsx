import { Beam } from '@platewright/core/ui/beam.tsx';
import type { DayView } from '@platewright/core/views/types.ts';

/** The three beams of the day; an empty place of the same height until the day is read. */
export function DayBeams({ day }: { day: DayView | null }) {
  return (
    <section class="beams" aria-label="Beams of the day">
      {day !== null && (
        <>
          <Beam beam={day.beams.protein} />
          <Beam beam={day.beams.carbohydrate} />
          <Beam beam={day.beams.fat} />
        </>
      )}
    </section>
  );
}
