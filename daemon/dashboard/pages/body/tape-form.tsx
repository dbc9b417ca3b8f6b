import { type TapeSite, tapeSiteSchema } from '@platewright/core/records/body.ts';
import { isWithin, limits } from '@platewright/core/records/limits.ts';
import { formatTape, lengthUnit, parseLength } from '@platewright/core/units/length.ts';
import type { BodyView } from '@platewright/core/views/body-types.ts';
import { Field } from '../../forms/field.tsx';
import { RecordForm } from '../../forms/record-form.tsx';
import { Select } from '../../forms/select.tsx';
import { keptDraft } from '../../state/draft.ts';
import { useAdd } from '../../state/use-add.ts';

const sites = tapeSiteSchema.options.map((value) => ({ value, label: value }));

interface TapeDraft {
  site: TapeSite;
  typed: string;
  /** Null as long as none was chosen: then it is today. */
  date: string | null;
}

const useDraft = keptDraft<TapeDraft>(({ typed }) => typed !== '');

/** One reading of the tape. */
export function TapeForm({ body }: { body: BodyView }) {
  const unit = lengthUnit(body.units.mass);
  const { draft, change, ids } = useDraft(`${body.athlete} ${body.date} ${unit}`, () => ({
    site: 'waist',
    typed: '',
    date: null,
  }));
  const { submit, add } = useAdd(ids);
  const { site, typed } = draft;
  const date = draft.date ?? body.date;
  const cm = parseLength(typed, unit);
  const right = isWithin(cm, limits.tapeCm);

  const save = async () => {
    if (!right || !date) return;
    const added = await add('tape', () => ({ date, site, cm }), `Taped ${site} at ${formatTape(cm, unit)}.`);
    if (added) change({ typed: '' });
  };

  return (
    <RecordForm submit={submit} save={save} ready={right && date !== ''} button="Record">
      <Select label="Site" value={site} options={sites} onChoice={(to) => change({ site: to })} />
      <Field
        label="Circumference"
        value={typed}
        onText={(text) => change({ typed: text })}
        unit={unit}
        inputMode="decimal"
        autocomplete="off"
        wrong={
          typed && !right
            ? `Type a length from ${formatTape(limits.tapeCm.least, unit)} to ${formatTape(limits.tapeCm.most, unit)}.`
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
    </RecordForm>
  );
}
