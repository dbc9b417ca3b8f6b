import { Choice } from '../forms/choice.tsx';
import { Field } from '../forms/field.tsx';
import type { AthletePartProps } from './part.ts';
import { TrainingField } from './training-field.tsx';

const mealCounts = ['3', '4', '5', '6', '7', '8'] as const;

/** The shape of a day: meals, waking hours, training. */
export function DayFields({ draft, set, wrong, today }: AthletePartProps & { today: string }) {
  const chosen = mealCounts.find((count) => Number(count) === draft.meals) ?? '';
  return (
    <div class="fields">
      <Choice
        legend="Meals a day"
        value={chosen}
        options={mealCounts.map((value) => ({ value, label: value }))}
        onChoice={(meals) => set({ meals: Number(meals) })}
      />
      <Field
        label="Wake"
        type="time"
        value={draft.wake}
        onText={(wake) => set({ wake })}
        wrong={wrong.wake}
      />
      <Field
        label="Sleep"
        type="time"
        value={draft.sleep}
        onText={(sleep) => set({ sleep })}
        wrong={wrong.sleep}
      />
      <Field
        label="Training starts"
        type="time"
        value={draft.trainingTime}
        onText={(trainingTime) => set({ trainingTime })}
        wrong={wrong.trainingTime}
      />
      <TrainingField
        training={draft.training}
        onTraining={(training) => set({ training })}
        today={today}
        wrong={wrong.training}
      />
    </div>
  );
}
