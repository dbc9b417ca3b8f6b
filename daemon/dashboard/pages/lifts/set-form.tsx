import { isWithin, limits } from '@platewright/core/records/limits.ts';
import { parseDecimal } from '@platewright/core/units/decimal.ts';
import type { LiftsView } from '@platewright/core/views/lifts-types.ts';
import { Field } from '../../forms/field.tsx';
import { RecordForm } from '../../forms/record-form.tsx';
import { Select } from '../../forms/select.tsx';
import { keptDraft } from '../../state/draft.ts';
import { useAdd } from '../../state/use-add.ts';
import { formatLoad, formatSet, parseLoad } from './load.ts';

/** `chosen` is the id of a lift, `typed` the repetitions. */
interface SetDraft {
  chosen: string;
  load: string;
  typed: string;
  date: string;
}

const useDraft = keptDraft<SetDraft>(({ load, typed }) => load !== '' || typed !== '');

/** One set: the lift, its load, its repetitions. */
export function SetForm({ view }: { view: LiftsView }) {
  const { lifts, units } = view;
  const { draft, change, ids } = useDraft(`${view.athlete} ${view.date} ${units.mass}`, () => ({
    ...{ chosen: '', load: '', typed: '' },
    date: view.date,
  }));
  const { chosen, load, typed, date } = draft;
  const { submit, add } = useAdd(ids);
  const lift = lifts.find(({ id }) => id === chosen) ?? lifts[0];
  const loadKg = parseLoad(load, units.mass);
  const repetitions = readRepetitions(typed);
  if (!lift) return null;

  const save = async () => {
    if (loadKg === undefined || repetitions === undefined || !date) return;
    const set = { date, lift: lift.id, loadKg, repetitions };
    if (!(await add('lift-set', () => set, `${lift.name}: ${formatSet(set, units.mass)}.`))) return;
    change({ load: '', typed: '' });
  };

  return (
    <RecordForm
      submit={submit}
      save={save}
      ready={loadKg !== undefined && repetitions !== undefined && date !== ''}
      button="Record the set"
      first
    >
      <Select
        label="Lift"
        value={lift.id}
        options={lifts.map(({ id, name }) => ({ value: id, label: name }))}
        onChoice={(to) => change({ chosen: to })}
      />
      <Field
        label="Load"
        value={load}
        onText={(to) => change({ load: to })}
        unit={units.mass}
        inputMode="decimal"
        autocomplete="off"
        hint={lift.nextMark && `Next mark: ${formatSet(lift.nextMark, units.mass)}`}
        wrong={
          load && loadKg === undefined
            ? `Type a load up to ${formatLoad(limits.loadKg.most, units.mass)}, 0 for none.`
            : undefined
        }
      />
      <Field
        label="Repetitions"
        value={typed}
        onText={(to) => change({ typed: to })}
        inputMode="numeric"
        autocomplete="off"
        wrong={typed && repetitions === undefined ? wrongRepetitions : undefined}
      />
      <Field label="Date" type="date" value={date} max={view.date} onText={(to) => change({ date: to })} />
    </RecordForm>
  );
}

const wrongRepetitions = `Type a whole number from ${limits.repetitions.least} to ${limits.repetitions.most}.`;

function readRepetitions(text: string): number | undefined {
  const count = parseDecimal(text);
  return isWithin(count, limits.repetitions) && Number.isInteger(count) ? count : undefined;
}
