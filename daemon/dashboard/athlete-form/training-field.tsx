import type { Training } from '@platewright/core/records/athlete.ts';
import { setUpDefaults } from '@platewright/core/targets/defaults.ts';
import { weekdaysInShort } from '@platewright/core/ui/format-date.ts';
import { Choice } from '../forms/choice.tsx';
import { CycleField } from './cycle-field.tsx';

interface TrainingFieldProps {
  training: Training;
  onTraining: (training: Training) => void;
  today: string;
  wrong?: string | undefined;
}

/** Which dates are session days: weekdays, or a cycle that repeats. */
export function TrainingField({ training, onTraining, today, wrong }: TrainingFieldProps) {
  const toggle = (day: number) => {
    if (training.kind !== 'weekdays') return;
    const days = training.days.includes(day)
      ? training.days.filter((known) => known !== day)
      : [...training.days, day].sort();
    onTraining({ kind: 'weekdays', days });
  };
  return (
    <div class="field wide">
      <Choice
        legend="Training days"
        value={training.kind}
        options={[
          { value: 'weekdays', label: 'On weekdays' },
          { value: 'cycle', label: 'In a cycle' },
        ]}
        onChoice={(kind) => {
          if (kind === training.kind) return;
          onTraining(
            kind === 'weekdays'
              ? { kind, days: [...setUpDefaults.training.days] }
              : { kind, start: today, days: ['session', 'session', 'recovery'] },
          );
        }}
        wrong={wrong}
      />
      {training.kind === 'weekdays' ? (
        <fieldset>
          <legend class="unseen">Session days</legend>
          <div class="choice">
            {weekdaysInShort.map((name, index) => (
              <label key={name}>
                <input
                  type="checkbox"
                  checked={training.days.includes(index + 1)}
                  onChange={() => toggle(index + 1)}
                />
                {name}
              </label>
            ))}
          </div>
        </fieldset>
      ) : (
        <CycleField cycle={training} onCycle={onTraining} />
      )}
    </div>
  );
}
