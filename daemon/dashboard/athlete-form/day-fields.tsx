import { Choice } from '../forms/choice.tsx';
import { Field } from '../forms/field.tsx';
import { type AthletePartProps, tied } from './part.ts';
import { TrainingField } from './training-field.tsx';

const mealCounts = ['3', '4', '5', '6', '7', '8'] as const;

/** The shape of a day: meals, waking hours, training. */
export function DayFields({ today, ...part }: AthletePartProps & { today: string }) {
  const { draft, set, wrong } = part;
  const chosen = mealCounts.find((count) => Number(count) === draft.meals) ?? '';
  return (
    <div class="fields">
      <Choice
        legend="Meals a day"
        value={chosen}
        options={mealCounts.map((value) => ({ value, label: value }))}
        onChoice={(meals) => set({ meals: Number(meals) })}
      />
      <Field label="Wake" type="time" {...tied(part, 'wake')} />
      <Field label="Sleep" type="time" {...tied(part, 'sleep')} />
      <Field label="Training starts" type="time" {...tied(part, 'trainingTime')} />
      <TrainingField
        training={draft.training}
        onTraining={(training) => set({ training })}
        today={today}
        wrong={wrong.training}
      />
    </div>
  );
}
