import type { Phase } from '@platewright/core/records/kinds.ts';
import type { PlanView } from '@platewright/core/views/plan-types.ts';
import { edit, sendEdits } from '../../api/edits.ts';
import { AimFields } from '../../athlete-form/aim-fields.tsx';
import { draftOfAim, draftOfAthlete, draftOfPhase, type PhaseDraft } from '../../athlete-form/draft.ts';
import { readPhase } from '../../athlete-form/read-phase.ts';
import { EditForm } from '../../forms/edit-form.tsx';
import { keptDraft } from '../../state/draft.ts';
import { useSubmit } from '../../state/use-submit.ts';

const useDraft = keptDraft<PhaseDraft>();

interface PhaseFormProps {
  plan: PlanView;
  phase: Phase | null;
  close: () => void;
}

/** A new phase, or a change to one. */
export function PhaseForm({ plan, phase, close }: PhaseFormProps) {
  const { id: athlete } = plan.athlete;
  const { draft, change, forget, ids } = useDraft(`${athlete} ${JSON.stringify(phase)}`, () =>
    phase ? draftOfPhase(phase) : draftOfAim('off-season', plan.date),
  );
  const { fields, wrong } = readPhase(draft);
  const submit = useSubmit({ ids });
  const leave = () => {
    forget();
    close();
  };
  const save = async () => {
    if (!fields) return;
    const whole = {
      ...fields,
      contestDate: fields.contestDate ?? null,
      startMarkG: fields.startMarkG ?? null,
    };
    if (await submit.run(() => sendEdits([edit('phase', athlete, phase?.id ?? submit.idOf(), whole)])))
      leave();
  };
  return (
    <EditForm what="the phase" submit={submit} save={save} ready={fields !== null} close={leave}>
      <AimFields
        phase={draft}
        athlete={draftOfAthlete({ ...plan.athlete, startMassKg: plan.session.bodyMassKg })}
        set={change}
        wrong={wrong}
        whole
      />
    </EditForm>
  );
}
