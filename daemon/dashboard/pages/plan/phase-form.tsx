import type { Phase } from '@platewright/core/records/kinds.ts';
import type { PlanView } from '@platewright/core/views/plan-types.ts';
import { useState } from 'preact/hooks';
import { edit, sendEdits } from '../../api/edits.ts';
import { AimFields } from '../../athlete-form/aim-fields.tsx';
import { draftOfAim, draftOfAthlete, draftOfPhase } from '../../athlete-form/draft.ts';
import { readPhase } from '../../athlete-form/read-phase.ts';
import { EditForm } from '../../forms/edit-form.tsx';
import { useSubmit } from '../../state/use-submit.ts';

interface PhaseFormProps {
  plan: PlanView;
  phase: Phase | null;
  close: () => void;
}

/** A new phase, or a change to one. */
export function PhaseForm({ plan, phase, close }: PhaseFormProps) {
  const [draft, setDraft] = useState(() =>
    phase ? draftOfPhase(phase) : draftOfAim('off-season', plan.date),
  );
  const { fields, wrong } = readPhase(draft);
  const submit = useSubmit();
  const { id: athlete } = plan.athlete;
  const save = async () => {
    if (!fields) return;
    const whole = {
      ...fields,
      contestDate: fields.contestDate ?? null,
      startMarkG: fields.startMarkG ?? null,
    };
    if (await submit.run(() => sendEdits([edit('phase', athlete, phase?.id ?? submit.idOf(), whole)])))
      close();
  };
  return (
    <EditForm what="the phase" submit={submit} save={save} ready={fields !== null} close={close}>
      <AimFields
        phase={draft}
        athlete={draftOfAthlete({ ...plan.athlete, startMassKg: plan.session.bodyMassKg })}
        set={setDraft}
        wrong={wrong}
        whole
      />
    </EditForm>
  );
}
