import { parseDecimal } from '@platewright/core/units/decimal.ts';
import type { LiftsView } from '@platewright/core/views/lifts-types.ts';
import { useState } from 'preact/hooks';
import { edit, removal, sendEdits } from '../../api/edits.ts';
import { Field } from '../../forms/field.tsx';
import { Select } from '../../forms/select.tsx';
import { ProblemNote } from '../../shell/problem-note.tsx';
import { useNotice } from '../../state/notice.tsx';
import { useSubmit } from '../../state/use-submit.ts';
import { formatLoad, formatSet, mostKg, parseLoad } from './load.ts';

/** One set: the lift, its load, its repetitions. */
export function SetForm({ view }: { view: LiftsView }) {
  const { athlete, lifts, units } = view;
  const { tell } = useNotice();
  const { busy, problem, run, idOf } = useSubmit();
  const [chosen, setChosen] = useState('');
  const [load, setLoad] = useState('');
  const [typed, setTyped] = useState('');
  const [date, setDate] = useState(view.date);
  const lift = lifts.find(({ id }) => id === chosen) ?? lifts[0];
  const loadKg = parseLoad(load, units.mass);
  const repetitions = readRepetitions(typed);
  if (!lift) return null;

  const save = async () => {
    if (loadKg === undefined || repetitions === undefined || !date) return;
    const id = idOf();
    const set = { date, lift: lift.id, loadKg, repetitions };
    if (!(await run(() => sendEdits([edit('lift-set', athlete, id, set)])))) return;
    tell(`${lift.name}: ${formatSet(set, units.mass)}.`, [removal('lift-set', athlete, id, true)]);
    setLoad('');
    setTyped('');
  };

  return (
    <form
      class="fields"
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      <Select
        label="Lift"
        value={lift.id}
        options={lifts.map(({ id, name }) => ({ value: id, label: name }))}
        onChoice={setChosen}
      />
      <Field
        label="Load"
        value={load}
        onText={setLoad}
        unit={units.mass}
        inputMode="decimal"
        autocomplete="off"
        hint={lift.nextMark && `Next mark: ${formatSet(lift.nextMark, units.mass)}`}
        wrong={
          load && loadKg === undefined
            ? `Type a load up to ${formatLoad(mostKg, units.mass)}, 0 for none.`
            : undefined
        }
      />
      <Field
        label="Repetitions"
        value={typed}
        onText={setTyped}
        inputMode="numeric"
        autocomplete="off"
        wrong={typed && repetitions === undefined ? 'Type a whole number from 1 to 100.' : undefined}
      />
      <Field label="Date" type="date" value={date} max={view.date} onText={setDate} />
      <div class="field-button">
        <button
          type="submit"
          class="button first"
          disabled={busy || loadKg === undefined || repetitions === undefined || !date}
        >
          Record the set
        </button>
      </div>
      {problem && <ProblemNote problem={problem} />}
    </form>
  );
}

function readRepetitions(text: string): number | undefined {
  const count = parseDecimal(text);
  return count !== undefined && Number.isInteger(count) && count >= 1 && count <= 100 ? count : undefined;
}
