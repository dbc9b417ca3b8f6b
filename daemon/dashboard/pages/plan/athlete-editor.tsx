import { formatBodyMass } from '@platewright/core/units/mass.ts';
import type { PlanView } from '@platewright/core/views/plan-types.ts';
import { edit, sendEdits } from '../../api/edits.ts';
import { CautionFields } from '../../athlete-form/caution-fields.tsx';
import { DayFields } from '../../athlete-form/day-fields.tsx';
import { type AthleteDraft, draftOfAthlete } from '../../athlete-form/draft.ts';
import { PersonFields } from '../../athlete-form/person-fields.tsx';
import { RateFields } from '../../athlete-form/rate-fields.tsx';
import { readAthlete } from '../../athlete-form/read-draft.ts';
import { EditForm } from '../../forms/edit-form.tsx';
import { keptDraft } from '../../state/draft.ts';
import { useSubmit } from '../../state/use-submit.ts';

const useDraft = keptDraft<AthleteDraft>();

/** The whole set-up as a form. Body mass at set-up is in force only until the first weekly call was decided. */
export function AthleteEditor({ plan, close }: { plan: PlanView; close: () => void }) {
  const { athlete } = plan;
  const { draft, change: set, forget } = useDraft(JSON.stringify(athlete), () => draftOfAthlete(athlete));
  const { fields, wrong } = readAthlete(draft, { ...athlete, today: plan.date });
  const submit = useSubmit();
  const leave = () => {
    forget();
    close();
  };
  const save = async () => {
    if (!fields) return;
    const whole = { ...fields, fatPercent: fields.fatPercent ?? null };
    if (await submit.run(() => sendEdits([edit('athlete', athlete.id, athlete.id, whole)]))) leave();
  };
  return (
    <EditForm what="the set-up" submit={submit} save={save} ready={fields !== null} close={leave}>
      <PersonFields draft={draft} set={set} wrong={wrong} massHint={inForce(plan)} />
      <DayFields draft={draft} set={set} wrong={wrong} today={plan.date} />
      <RateFields draft={draft} set={set} wrong={wrong} />
      <CautionFields draft={draft} set={set} />
    </EditForm>
  );
}

/** Once a weekly call was decided, another body mass typed here would change no target. */
function inForce({ athlete, session }: PlanView): string | undefined {
  if (session.bodyMassKg === athlete.startMassKg) return undefined;
  return `At set-up. ${formatBodyMass(session.bodyMassKg, athlete.massUnit)} is in force, by the weekly call.`;
}
