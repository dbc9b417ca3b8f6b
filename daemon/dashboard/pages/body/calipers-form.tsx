import { calipersFat, foldSites } from '@platewright/core/body/calipers.ts';
import type { CaliperMethod, FoldSite } from '@platewright/core/records/body.ts';
import { isWithin, limits } from '@platewright/core/records/limits.ts';
import { formatDecimal, parseDecimalIn } from '@platewright/core/units/decimal.ts';
import type { BodyView } from '@platewright/core/views/body-types.ts';
import { Field } from '../../forms/field.tsx';
import { RecordForm } from '../../forms/record-form.tsx';
import { Select } from '../../forms/select.tsx';
import { keptDraft } from '../../state/draft.ts';
import { useAdd } from '../../state/use-add.ts';
import { fatWords } from './fat-words.ts';

const methods: readonly { value: CaliperMethod; label: string }[] = [
  { value: 'jackson-pollock 3', label: '3 folds, Jackson and Pollock' },
  { value: 'jackson-pollock 7', label: '7 folds, Jackson and Pollock' },
  { value: 'durnin-womersley', label: '4 folds, Durnin and Womersley' },
];

interface CalipersDraft {
  method: CaliperMethod;
  typed: { [S in FoldSite]?: string };
  /** Null as long as none was chosen: then it is today. */
  date: string | null;
}

const useDraft = keptDraft<CalipersDraft>(({ typed }) => Object.values(typed).some((text) => text !== ''));

/** The skinfolds of one date; what they say of body fat stands there as they are typed. */
export function CalipersForm({ body }: { body: BodyView }) {
  const { person, calipers } = body;
  const { draft, change, ids } = useDraft(`${body.athlete} ${body.date}`, () => ({
    method: calipers[0]?.method ?? 'jackson-pollock 3',
    typed: {},
    date: null,
  }));
  const { submit, add } = useAdd(ids);
  const { method, typed } = draft;
  const date = draft.date ?? body.date;
  const sites = foldSites(person.sex, method);
  const folds: { [S in FoldSite]?: number } = {};
  for (const site of sites) {
    const mm = parseDecimalIn(typed[site] ?? '', 'mm');
    if (isWithin(mm, limits.foldMm)) folds[site] = mm;
  }
  const fat = calipersFat(person, method, folds);
  const whole = sites.every((site) => folds[site] !== undefined);

  const save = async () => {
    if (!whole || !date) return;
    const done = fat ? `Recorded the folds: ${formatDecimal(fat.percent, 1)} % fat.` : 'Recorded the folds.';
    if (await add('calipers', () => ({ date, method, folds }), done)) change({ typed: {} });
  };

  return (
    <RecordForm
      submit={submit}
      save={save}
      ready={whole && date !== ''}
      button="Record"
      below={
        <p class="wide" role="status">
          {fat && fatWords(fat)}
          {whole && !fat && 'These folds can’t be a body’s: look at them again.'}
        </p>
      }
    >
      <div class="fields wide">
        <Select label="Method" value={method} options={methods} onChoice={(to) => change({ method: to })} />
        <Field
          label="Date"
          type="date"
          value={date}
          max={body.date}
          onText={(text) => change({ date: text })}
        />
      </div>
      {sites.map((site) => (
        <Field
          key={site}
          label={<span class="capital">{site}</span>}
          value={typed[site] ?? ''}
          onText={(text) => change({ typed: { ...typed, [site]: text } })}
          unit="mm"
          inputMode="decimal"
          autocomplete="off"
          wrong={
            typed[site] && folds[site] === undefined
              ? `Type ${limits.foldMm.least} to ${limits.foldMm.most} mm.`
              : undefined
          }
        />
      ))}
    </RecordForm>
  );
}
