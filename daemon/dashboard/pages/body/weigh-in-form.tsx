import { isWithin, limits } from '@platewright/core/records/limits.ts';
import { type BodyMassUnit, formatBodyMass, parseBodyMass } from '@platewright/core/units/mass.ts';
import type { BodyView } from '@platewright/core/views/body-types.ts';
import { useState } from 'preact/hooks';
import { Field } from '../../forms/field.tsx';
import { RecordForm } from '../../forms/record-form.tsx';
import { keptDraft } from '../../state/draft.ts';
import { useAdd } from '../../state/use-add.ts';
import { isFarOff } from './far-off.ts';
import { instantOn } from './instant-on.ts';

interface WeighInDraft {
  mass: string;
  note: string;
  /** Null as long as none was chosen: then it is today. */
  date: string | null;
}

const useDraft = keptDraft<WeighInDraft>(({ mass, note }) => mass !== '' || note !== '');

/** One weigh-in: a number and Enter. */
export function WeighInForm({ body }: { body: BodyView }) {
  const { mass: unit } = body.units;
  const { draft, change, ids } = useDraft(`${body.athlete} ${body.date} ${unit}`, () => ({
    mass: '',
    note: '',
    date: null,
  }));
  const { mass, note, date: chosen } = draft;
  const { submit, add } = useAdd(ids);
  const date = chosen ?? body.date;
  // What was already asked about, kg.
  const [asked, setAsked] = useState<number | null>(null);
  const latestKg = body.points.at(-1)?.lineKg.mean ?? body.bodyMassInForceKg;
  const kg = parseBodyMass(mass, unit);
  const right = isWithin(kg, limits.weighInKg);

  const save = async () => {
    if (!right || !date) return;
    if (isFarOff(kg, latestKg) && asked !== kg) {
      setAsked(kg);
      return;
    }
    const fields = { date, kg, at: instantOn(date, body.date), ...(note.trim() && { note: note.trim() }) };
    if (!(await add('weigh-in', () => fields, `Weighed in at ${formatBodyMass(kg, unit)}.`))) return;
    setAsked(null);
    change({ mass: '', note: '' });
  };

  return (
    <RecordForm
      submit={submit}
      save={save}
      ready={right && date !== ''}
      button="Weigh in"
      first
      below={kg !== undefined && asked === kg && <FarOff {...{ kg, latestKg, unit }} />}
    >
      <Field
        label="Body mass"
        value={mass}
        onText={(text) => change({ mass: text })}
        unit={unit}
        inputMode="decimal"
        autocomplete="off"
        wrong={
          mass && !right
            ? `Type a body mass from ${formatBodyMass(limits.weighInKg.least, unit)} to ${formatBodyMass(limits.weighInKg.most, unit)}.`
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

/** Asked once, since it is mostly the unit: a second press keeps it. */
function FarOff({ kg, latestKg, unit }: { kg: number; latestKg: number; unit: BodyMassUnit }) {
  return (
    <p class="wrong" role="alert">
      {formatBodyMass(kg, unit)} is far from the {formatBodyMass(latestKg, unit)} of late. Check the number
      and its unit; if it is right, press Weigh in once more.
    </p>
  );
}
