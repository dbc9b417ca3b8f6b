import { useState } from 'preact/hooks';
import { Field } from '../../forms/field.tsx';
import { Form } from '../../forms/form.tsx';
import { Select } from '../../forms/select.tsx';

interface MoveEntryProps {
  name: string;
  date: string;
  meal: number;
  meals: number;
  move: (date: string, meal: number) => void;
  cancel: () => void;
}

/** Where an entry goes: another meal, another date. */
export function MoveEntry({ name, date, meal, meals, move, cancel }: MoveEntryProps) {
  const [to, setTo] = useState(String(meal));
  const [on, setOn] = useState(date);
  const options = Array.from({ length: meals }, (_, index) => {
    const value = String(index + 1);
    return { value, label: `Meal ${value}` };
  });
  return (
    <Form class="inline-form" aria-label={`Move ${name}`} opened save={() => move(on || date, Number(to))}>
      <Select label="To" value={to} options={options} onChoice={setTo} />
      <Field label="On" type="date" value={on} onText={setOn} />
      <button type="submit" class="button small">
        Move
      </button>
      <button type="button" class="link small" onClick={cancel}>
        Leave it
      </button>
    </Form>
  );
}
