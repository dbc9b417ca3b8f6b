import { Choice } from '../forms/choice.tsx';
import { Field } from '../forms/field.tsx';
import { inMassUnit } from './draft.ts';
import { type AthletePartProps, tied } from './part.ts';

interface PersonFieldsProps extends AthletePartProps {
  /** What is to be known of the body mass beside what is typed. */
  massHint?: string | undefined;
}

/** Units and the body. */
export function PersonFields({ massHint, ...part }: PersonFieldsProps) {
  const { draft, set, wrong } = part;
  return (
    <div class="fields">
      <Choice
        legend="Body mass in"
        value={draft.massUnit}
        options={[
          { value: 'kg', label: 'kg' },
          { value: 'lb', label: 'lb' },
        ]}
        onChoice={(massUnit) => set(inMassUnit(draft, massUnit))}
      />
      <Choice
        legend="Energy in"
        value={draft.energyUnit}
        options={[
          { value: 'kcal', label: 'kcal' },
          { value: 'kJ', label: 'kJ' },
        ]}
        onChoice={(energyUnit) => set({ energyUnit })}
      />
      <Choice
        legend="Sex"
        value={draft.sex}
        options={[
          { value: 'female', label: 'Female' },
          { value: 'male', label: 'Male' },
        ]}
        onChoice={(sex) => set({ sex })}
        wrong={wrong.sex}
      />
      <Field label="Name" {...tied(part, 'name')} />
      <Field
        label="Birth year"
        {...tied(part, 'birthYear')}
        inputMode="numeric"
        placeholder="such as 1990"
        autocomplete="bday-year"
      />
      <Field
        label="Height"
        {...tied(part, 'height')}
        unit={draft.massUnit === 'kg' ? 'cm' : 'in'}
        placeholder={draft.massUnit === 'kg' ? 'such as 178' : 'such as 5 ft 10 in'}
      />
      <Field
        label="Body mass"
        {...tied(part, 'mass')}
        unit={draft.massUnit}
        hint={massHint}
        inputMode="decimal"
        placeholder={draft.massUnit === 'kg' ? 'such as 82.5' : 'such as 182'}
      />
      <Field
        label="Body fat"
        {...tied(part, 'fatPercent')}
        unit="%"
        inputMode="decimal"
        placeholder="if measured, at this mass"
      />
    </div>
  );
}
