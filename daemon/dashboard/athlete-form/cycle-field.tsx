import type { Training } from '@platewright/core/records/athlete.ts';
import { limits } from '@platewright/core/records/limits.ts';
import { Field } from '../forms/field.tsx';

type Cycle = Extract<Training, { kind: 'cycle' }>;

/** A cycle of session and recovery days: press a day to change it, make the cycle longer or shorter. */
export function CycleField({ cycle, onCycle }: { cycle: Cycle; onCycle: (cycle: Cycle) => void }) {
  const turn = (at: number) =>
    onCycle({
      ...cycle,
      days: cycle.days.map((kind, index) =>
        index !== at ? kind : kind === 'session' ? 'recovery' : 'session',
      ),
    });
  return (
    <div class="field cycle-field">
      <ol class="cycle" aria-label="Days of the cycle">
        {cycle.days.map((kind, index) => (
          <li key={index}>
            <button
              type="button"
              class="button small"
              aria-pressed={kind === 'session'}
              onClick={() => turn(index)}
            >
              {index + 1} {kind}
            </button>
          </li>
        ))}
      </ol>
      <div class="buttons">
        <button
          type="button"
          class="button small"
          disabled={cycle.days.length >= limits.cycleDays.most}
          onClick={() => onCycle({ ...cycle, days: [...cycle.days, 'recovery'] })}
        >
          Add a day
        </button>
        <button
          type="button"
          class="button small"
          disabled={cycle.days.length <= limits.cycleDays.least}
          onClick={() => onCycle({ ...cycle, days: cycle.days.slice(0, -1) })}
        >
          Take the last away
        </button>
      </div>
      <Field
        label="Day 1 of the cycle was or is on"
        type="date"
        value={cycle.start}
        onText={(start) => start && onCycle({ ...cycle, start })}
      />
    </div>
  );
}
