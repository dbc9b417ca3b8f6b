import { formatBodyMass, parseBodyMass } from '@platewright/core/units/mass.ts';
import type { BodyView } from '@platewright/core/views/body-types.ts';
import { useState } from 'preact/hooks';
import { edit, removal, sendEdits } from '../../api/edits.ts';
import { Field } from '../../forms/field.tsx';
import { ProblemNote } from '../../shell/problem-note.tsx';
import { useNotice } from '../../state/notice.tsx';
import { useSubmit } from '../../state/use-submit.ts';
import { instantOn } from './instant-on.ts';

/** One weigh-in: a number and Enter. */
export function WeighInForm({ body }: { body: BodyView }) {
  const { athlete, units } = body;
  const { tell } = useNotice();
  const { busy, problem, run, idOf } = useSubmit();
  const [mass, setMass] = useState('');
  const [date, setDate] = useState(body.date);
  const [note, setNote] = useState('');
  const kg = parseBodyMass(mass, units.mass);
  const right = kg !== undefined && kg >= 20 && kg <= 400;

  const save = async () => {
    if (!right || !date) return;
    const id = idOf();
    const fields = { date, kg, at: instantOn(date, body.date), ...(note.trim() && { note: note.trim() }) };
    if (!(await run(() => sendEdits([edit('weigh-in', athlete, id, fields)])))) return;
    tell(`Weighed in at ${formatBodyMass(kg, units.mass)}.`, [removal('weigh-in', athlete, id, true)]);
    setMass('');
    setNote('');
  };

  return (
    <form
      class="weigh-in fields"
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      <Field
        label="Body mass"
        value={mass}
        onText={setMass}
        unit={units.mass}
        inputMode="decimal"
        autocomplete="off"
        wrong={
          mass && !right
            ? `Type a body mass from ${formatBodyMass(20, units.mass)} to ${formatBodyMass(400, units.mass)}.`
            : undefined
        }
      />
      <Field label="Date" type="date" value={date} max={body.date} onText={setDate} />
      <Field label="Note" value={note} onText={setNote} maxLength={2000} />
      <div class="field-button">
        <button type="submit" class="button first" disabled={busy || !right}>
          Weigh in
        </button>
      </div>
      {problem && <ProblemNote problem={problem} />}
    </form>
  );
}
