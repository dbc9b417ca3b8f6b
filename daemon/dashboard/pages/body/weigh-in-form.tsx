import { formatBodyMass, parseBodyMass } from '@platewright/core/units/mass.ts';
import type { BodyView } from '@platewright/core/views/body-types.ts';
import { useState } from 'preact/hooks';
import { Field } from '../../forms/field.tsx';
import { RecordForm } from '../../forms/record-form.tsx';
import { useAdd } from '../../state/use-add.ts';
import { instantOn } from './instant-on.ts';

/** One weigh-in: a number and Enter. */
export function WeighInForm({ body }: { body: BodyView }) {
  const { mass: unit } = body.units;
  const { submit, add } = useAdd();
  const [mass, setMass] = useState('');
  const [date, setDate] = useState(body.date);
  const [note, setNote] = useState('');
  const kg = parseBodyMass(mass, unit);
  const right = kg !== undefined && kg >= 20 && kg <= 400;

  const save = async () => {
    if (!right || !date) return;
    const fields = { date, kg, at: instantOn(date, body.date), ...(note.trim() && { note: note.trim() }) };
    if (!(await add('weigh-in', () => fields, `Weighed in at ${formatBodyMass(kg, unit)}.`))) return;
    setMass('');
    setNote('');
  };

  return (
    <RecordForm submit={submit} save={save} ready={right && date !== ''} button="Weigh in" first>
      <Field
        label="Body mass"
        value={mass}
        onText={setMass}
        unit={unit}
        inputMode="decimal"
        autocomplete="off"
        wrong={
          mass && !right
            ? `Type a body mass from ${formatBodyMass(20, unit)} to ${formatBodyMass(400, unit)}.`
            : undefined
        }
      />
      <Field label="Date" type="date" value={date} max={body.date} onText={setDate} />
      <Field label="Note" value={note} onText={setNote} maxLength={2000} />
    </RecordForm>
  );
}
