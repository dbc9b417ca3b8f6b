import { Choice } from '../forms/choice.tsx';
import { Field } from '../forms/field.tsx';
import { inMassUnit } from './draft.ts';
import type { AthletePartProps } from './part.ts';

/** Units and the body. */
export function PersonFields({ draft, set, wrong }: AthletePartProps) {
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
      <Field label="Name" value={draft.name} onText={(name) => set({ name })} wrong={wrong.name} />
      <Field
        label="Birth year"
        value={draft.birthYear}
        onText={(birthYear) => set({ birthYear })}
        wrong={wrong.birthYear}
        inputMode="numeric"
        placeholder="1990"
        autocomplete="bday-year"
      />
      <Field
        label="Height"
        value={draft.height}
        onText={(height) => set({ height })}
        wrong={wrong.height}
        unit={draft.massUnit === 'kg' ? 'cm' : 'in'}
        placeholder={draft.massUnit === 'kg' ? '178' : '5 ft 10 in'}
      />
      <Field
        label="Body mass"
        value={draft.mass}
        onText={(mass) => set({ mass })}
        wrong={wrong.mass}
        unit={draft.massUnit}
        inputMode="decimal"
        placeholder={draft.massUnit === 'kg' ? '82.5' : '182'}
      />
      <Field
        label="Body fat"
        value={draft.fatPercent}
        onText={(fatPercent) => set({ fatPercent })}
        wrong={wrong.fatPercent}
        unit="%"
        inputMode="decimal"
        placeholder="if measured"
      />
    </div>
  );
}
