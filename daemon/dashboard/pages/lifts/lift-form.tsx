import { limits } from '@platewright/core/records/limits.ts';
import type { LiftsView, LiftView } from '@platewright/core/views/lifts-types.ts';
import { edit, removal, sendEdits } from '../../api/edits.ts';
import { EditForm } from '../../forms/edit-form.tsx';
import { Field } from '../../forms/field.tsx';
import { keptDraft } from '../../state/draft.ts';
import { useNotice } from '../../state/notice.tsx';
import { useSubmit } from '../../state/use-submit.ts';
import { formatLoad, loadFigure, parseLoad, usualStepKg } from './load.ts';

const useDraft = keptDraft<{ name: string; step: string; key: boolean }>();

interface LiftFormProps {
  view: LiftsView;
  /** Null for a new one. */
  lift: LiftView | null;
  close: () => void;
}

/** A lift that is tracked: its name, the smallest step of its bar, and whether it is a key lift. */
export function LiftForm({ view, lift, close }: LiftFormProps) {
  const { athlete, units } = view;
  const { tell } = useNotice();
  const changed = lift && [lift.id, lift.name, lift.smallestStepKg, lift.key];
  const { draft, change, forget, ids } = useDraft(
    `${athlete} ${JSON.stringify(changed)} ${units.mass}`,
    () => ({
      name: lift?.name ?? '',
      step: loadFigure(lift?.smallestStepKg ?? usualStepKg[units.mass], units.mass),
      key: lift?.key ?? true,
    }),
  );
  const { name, step, key } = draft;
  const submit = useSubmit({ ids });
  const leave = () => {
    forget();
    close();
  };
  const smallestStepKg = parseLoad(step, units.mass);
  const right = name.trim() !== '' && smallestStepKg !== undefined && smallestStepKg > 0;

  const save = async () => {
    if (!right) return;
    const id = lift?.id ?? submit.idOf();
    const fields = { name: name.trim(), key, smallestStepKg };
    if (!(await submit.run(() => sendEdits([edit('lift', athlete, id, fields)])))) return;
    if (lift) {
      const before = { name: lift.name, key: lift.key, smallestStepKg: lift.smallestStepKg };
      tell(`Changed ${fields.name}.`, [edit('lift', athlete, id, before)]);
    } else tell(`Added ${fields.name}.`, [removal('lift', athlete, id, true)]);
    leave();
  };

  return (
    <EditForm what="the lift" submit={submit} save={save} ready={right} close={leave}>
      <div class="fields">
        <Field
          label="Name"
          value={name}
          onText={(to) => change({ name: to })}
          maxLength={120}
          placeholder="Squat"
        />
        <Field
          label="Smallest step"
          value={step}
          onText={(to) => change({ step: to })}
          unit={units.mass}
          inputMode="decimal"
          autocomplete="off"
          hint="Both sides of the bar together."
          wrong={
            step && !(smallestStepKg && smallestStepKg > 0)
              ? `Type a load above 0, up to ${formatLoad(limits.loadKg.most, units.mass)}.`
              : undefined
          }
        />
      </div>
      <label class="check">
        <input
          type="checkbox"
          checked={key}
          onChange={(event) => change({ key: event.currentTarget.checked })}
        />
        <span>Key lift: the weekly call looks at it</span>
      </label>
    </EditForm>
  );
}
