import type { FieldsOf } from '@platewright/core/records/kinds.ts';
import { dayTargets } from '@platewright/core/targets/day-targets.ts';
import { unitsOf } from '@platewright/core/units/reader.ts';
import { PlannedMeals } from '../../targets/planned-meals.tsx';
import { TargetsTable } from '../../targets/targets-table.tsx';
import { Cautions, GaveWay } from '../../targets/warnings.tsx';

interface LiveTargetsProps {
  athlete: FieldsOf<'athlete'> | null;
  phase: FieldsOf<'phase'> | null;
  today: string;
  /** Whether a field is marked as wrong. */
  marked: boolean;
}

/** What a session day would ask for, by the form as it stands. */
export function LiveTargets({ athlete, phase, today, marked }: LiveTargetsProps) {
  if (!athlete) {
    return (
      <aside class="beside" aria-label="Targets">
        <h2>Targets</h2>
        <p class="soft">
          {marked
            ? 'Something in the form is missing or can’t be read. Mend the marked field, and the targets appear here.'
            : 'Protein quota, carbohydrate band and mark, fat floor, energy and meal times appear here, each with its reason, once name, sex, birth year, height and body mass are there.'}
        </p>
      </aside>
    );
  }
  const draft = { id: 'draft', athlete: 'draft' };
  const phases = phase ? [{ ...phase, ...draft, from: today }] : [];
  const targets = dayTargets({ athlete, phases, calls: [] }, today, 'session');
  const units = unitsOf(athlete);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls must be reachable by keyboard.
    <aside class="beside" aria-label="Targets" tabIndex={0}>
      <h2>Targets of a session day</h2>
      <Cautions cautions={targets.cautions} />
      <TargetsTable targets={targets} units={units} />
      <GaveWay sentences={targets.gaveWay} />
      <h3>Meals</h3>
      <PlannedMeals meals={targets.meals} reasons={targets.reasons} caption="Meals of a session day" />
    </aside>
  );
}
