import type { Phase } from '@platewright/core/records/kinds.ts';
import type { PlanView } from '@platewright/core/views/plan-types.ts';
import { useState } from 'preact/hooks';
import { edit, sendEdits } from '../../api/edits.ts';
import { AimFields } from '../../athlete-form/aim-fields.tsx';
import { draftOfAim, draftOfAthlete, draftOfPhase } from '../../athlete-form/draft.ts';
import { readPhase } from '../../athlete-form/read-draft.ts';
import { ProblemNote } from '../../shell/problem-note.tsx';
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
  const { busy, problem, run, idOf } = useSubmit();
  const { id: athlete } = plan.athlete;
  const save = async () => {
    if (!fields) return;
    const whole = {
      ...fields,
      contestDate: fields.contestDate ?? null,
      startMarkG: fields.startMarkG ?? null,
    };
    if (await run(() => sendEdits([edit('phase', athlete, phase?.id ?? idOf(), whole)]))) close();
  };
  return (
    <form
      class="stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      <AimFields
        phase={draft}
        athlete={draftOfAthlete({ ...plan.athlete, startMassKg: plan.session.bodyMassKg })}
        set={setDraft}
        wrong={wrong}
        whole
      />
      {problem && <ProblemNote problem={problem} />}
      <div class="buttons">
        <button type="submit" class="button first" disabled={busy || !fields}>
          Save the phase
        </button>
        <button type="button" class="button" onClick={close}>
          Leave it
        </button>
      </div>
    </form>
  );
}
