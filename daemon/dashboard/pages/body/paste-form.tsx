import type { BodyMassUnit } from '@platewright/core/units/mass.ts';
import type { BodyView } from '@platewright/core/views/body-types.ts';
import { useId, useMemo, useState } from 'preact/hooks';
import { edit, removal, sendEdits } from '../../api/edits.ts';
import { Choice } from '../../forms/choice.tsx';
import { ProblemNote } from '../../shell/problem-note.tsx';
import { keptDraft } from '../../state/draft.ts';
import { useNotice } from '../../state/notice.tsx';
import { useSubmit } from '../../state/use-submit.ts';
import { instantOn } from './instant-on.ts';
import { PastePreview } from './paste-preview.tsx';
import { type DayOrder, hasSlashes, orderIn } from './read-date.ts';
import { readWeighIns } from './read-weigh-ins.ts';

const useDraft = keptDraft<{ pasted: string }>(({ pasted }) => pasted !== '');

/** Many weigh-ins at once, from a table or a file: read while they are pasted, and stored when they look right. */
export function PasteForm({ body }: { body: BodyView }) {
  const { athlete, units } = body;
  const id = useId();
  const { draft, change, ids } = useDraft(`${athlete} ${units.mass}`, () => ({ pasted: '' }));
  const { pasted } = draft;
  const setPasted = (text: string) => change({ pasted: text });
  const [chosen, setChosen] = useState<DayOrder | null>(null);
  const order = chosen ?? orderIn(pasted);
  const { busy, problem, run, withIds } = useSubmit({ ids });
  const { tell } = useNotice();
  const lines = useMemo(
    () => readWeighIns(pasted, { unit: units.mass, order, today: body.date }),
    [pasted, units.mass, order, body.date],
  );
  const known = useMemo(
    () => new Set(body.points.flatMap(({ date, weighIns }) => weighIns.map(({ kg }) => keyOf(date, kg)))),
    [body.points],
  );
  const right = lines.filter((line) => line.wrong === null);
  const fresh = right.filter((line) => !known.has(keyOf(line.date, line.kg)));

  const save = async () => {
    const records = withIds(fresh.map(({ date, kg }) => ({ date, kg, at: instantOn(date, body.date) })));
    const stored = await run(() =>
      sendEdits(records.map((record) => edit('weigh-in', athlete, record.id, record.fields))),
    );
    if (!stored) return;
    // What could not be read stays, so that it can be put right.
    setPasted(
      lines
        .filter((line) => line.wrong !== null)
        .map((line) => line.text)
        .join('\n'),
    );
    tell(
      `Took in ${weighIns(records.length)}.`,
      records.map((record) => removal('weigh-in', athlete, record.id, true)),
    );
  };

  return (
    <div class="stack">
      <div class="field">
        <label for={id}>One weigh-in a line: a date and a body mass</label>
        <textarea
          id={id}
          class="input paste"
          rows={6}
          spellcheck={false}
          placeholder={examples[units.mass]}
          value={pasted}
          onInput={(event) => setPasted(event.currentTarget.value)}
        />
        <label class="file">
          or take a CSV file{' '}
          <input
            type="file"
            accept=".csv,.txt,text/csv,text/plain"
            onChange={async (event) => {
              const file = event.currentTarget.files?.[0];
              if (file) setPasted(await file.text());
            }}
          />
        </label>
      </div>
      {hasSlashes(pasted) && (
        <Choice
          legend="Dates with slashes have the"
          value={order ?? ''}
          options={[
            { value: 'day first', label: 'day first' },
            { value: 'month first', label: 'month first' },
          ]}
          onChoice={setChosen}
        />
      )}
      {lines.length > 0 && (
        <PastePreview lines={lines} unit={units.mass} doubles={right.length - fresh.length} />
      )}
      {problem && <ProblemNote problem={problem} />}
      <div>
        <button
          type="button"
          class="button"
          disabled={busy || fresh.length === 0}
          onClick={() => void save()}
        >
          {busy ? 'Taking in…' : `Take in ${fresh.length === 0 ? 'the weigh-ins' : weighIns(fresh.length)}`}
        </button>
      </div>
    </div>
  );
}

const examples: Record<BodyMassUnit, string> = {
  kg: '2025-03-01, 82.4\n2025-03-02, 82.1\n2025-03-03; 82,6 kg',
  lb: '2025-03-01, 181.6\n2025-03-02, 181.0\n2025-03-03; 82,6 kg',
};

/** Two readings of a date are the same when a scale would show the same. */
function keyOf(date: string, kg: number): string {
  return `${date} ${kg.toFixed(1)}`;
}

function weighIns(count: number): string {
  return count === 1 ? '1 weigh-in' : `${count} weigh-ins`;
}
