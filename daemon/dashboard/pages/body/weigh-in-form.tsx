import { formatBodyMass, parseBodyMass } from '@platewright/core/units/mass.ts';
import type { BodyView } from '@platewright/core/views/body-types.ts';
import { Field } from '../../forms/field.tsx';
import { RecordForm } from '../../forms/record-form.tsx';
import { keptDraft } from '../../state/draft.ts';
import { useAdd } from '../../state/use-add.ts';
import { instantOn } from './instant-on.ts';

interface WeighInDraft {
  mass: string;
  note: string;
  /** Null as long as none was chosen: then it is today. */
  date: string | null;
}

const useDraft = keptDraft<WeighInDraft>(
  () => ({ mass: '', note: '', date: null }),
  ({ mass, note }) => mass !== '' || note !== '',
);

/** One weigh-in: a number and Enter. */
export function WeighInForm({ body }: { body: BodyView }) {
  const { mass: unit } = body.units;
  const { submit, add } = useAdd();
  const [{ mass, note, date: chosen }, change] = useDraft(`${body.athlete} ${body.date}`);
  const date = chosen ?? body.date;
  const kg = parseBodyMass(mass, unit);
  const right = kg !== undefined && kg >= 20 && kg <= 400;

  const save = async () => {
    if (!right || !date) return;
    const fields = { date, kg, at: instantOn(date, body.date), ...(note.trim() && { note: note.trim() }) };
    if (!(await add('weigh-in', () => fields, `Weighed in at ${formatBodyMass(kg, unit)}.`))) return;
    change({ mass: '', note: '' });
  };

  return (
    <RecordForm submit={submit} save={save} ready={right && date !== ''} button="Weigh in" first>
      <Field
        label="Body mass"
        value={mass}
        onText={(text) => change({ mass: text })}
        unit={unit}
        inputMode="decimal"
        autocomplete="off"
        wrong={
          mass && !right
            ? `Type a body mass from ${formatBodyMass(20, unit)} to ${formatBodyMass(400, unit)}.`
            : undefined
        }
      />
      <Field
        label="Date"
        type="date"
        value={date}
        max={body.date}
        onText={(text) => change({ date: text })}
      />
      <Field label="Note" value={note} onText={(text) => change({ note: text })} maxLength={2000} />
    </RecordForm>
  );
}
