import { localDate } from '@platewright/core/season/local-date.ts';
import { setUpDefaults } from '@platewright/core/targets/defaults.ts';
import { useState } from 'preact/hooks';
import { edit, sendEdits } from '../../api/edits.ts';
import { AimFields } from '../../athlete-form/aim-fields.tsx';
import { CautionFields } from '../../athlete-form/caution-fields.tsx';
import { DayFields } from '../../athlete-form/day-fields.tsx';
import { type AthleteDraft, draftOfAim, emptyAthlete, type PhaseDraft } from '../../athlete-form/draft.ts';
import { PersonFields } from '../../athlete-form/person-fields.tsx';
import { RateFields } from '../../athlete-form/rate-fields.tsx';
import { readAthlete } from '../../athlete-form/read-draft.ts';
import { readPhase } from '../../athlete-form/read-phase.ts';
import { shownWrong } from '../../athlete-form/shown-wrong.ts';
import { Form } from '../../forms/form.tsx';
import { Page, Section } from '../../shell/page.tsx';
import { ProblemNote } from '../../shell/problem-note.tsx';
import { keptDraft } from '../../state/draft.ts';
import { useSubmit } from '../../state/use-submit.ts';
import { LiveTargets } from './live-targets.tsx';

const useDraft = keptDraft<{ draft: AthleteDraft; phase: PhaseDraft }>();

/** The first run: one page, and the targets beside it as you type. */
export function SetUpPage({ done }: { done: () => Promise<void> }) {
  const timeZone = Intl.DateTimeFormat().resolvedOptions().timeZone;
  const today = localDate(Date.now(), { timeZone, rolloverHour: setUpDefaults.rolloverHour });
  const kept = useDraft('set-up', () => ({ draft: emptyAthlete(), phase: draftOfAim('off-season', today) }));
  const { draft, phase } = kept.draft;
  const setPhase = (next: PhaseDraft) => kept.change({ phase: next });
  const [tried, setTried] = useState(false);
  const { busy, problem, run, idOf } = useSubmit({ ids: kept.ids });

  const athlete = readAthlete(draft, { today, timeZone });
  const aim = readPhase(phase);
  const wrong = shownWrong(draft, athlete.wrong, tried);
  const set = (change: Partial<AthleteDraft>) => kept.change({ draft: { ...draft, ...change } });

  const save = async () => {
    setTried(true);
    const [fields, phaseFields] = [athlete.fields, aim.fields];
    if (!fields || !phaseFields) {
      setTimeout(focusFirstWrong);
      return;
    }
    await run(async () => {
      const id = idOf('athlete');
      await sendEdits([edit('athlete', id, id, fields), edit('phase', id, idOf('phase'), phaseFields)]);
      kept.forget();
      await done();
    });
  };

  return (
    <Page title="Set up" lead="Under a minute. Everything can be changed later, under Plan.">
      <Form class="two-columns set-up" noValidate save={save}>
        <div>
          <Section title="You">
            <PersonFields draft={draft} set={set} wrong={wrong} />
          </Section>
          <Section title="Phase and aim">
            <AimFields phase={phase} athlete={draft} set={setPhase} wrong={aim.wrong} />
          </Section>
          <Section title="Day and training">
            <DayFields draft={draft} set={set} wrong={wrong} today={today} />
          </Section>
          <Section title="Rates">
            <RateFields draft={draft} set={set} wrong={wrong} />
          </Section>
          <Section title="Cautions">
            <CautionFields draft={draft} set={set} />
          </Section>
        </div>
        <LiveTargets
          athlete={athlete.fields}
          phase={aim.fields}
          today={today}
          marked={Object.keys(wrong).length > 0}
        />
        <div class="set-up-end">
          {problem && <ProblemNote problem={problem} />}
          {tried && (!athlete.fields || !aim.fields) && (
            <p class="wrong" role="alert">
              Something above is missing or can’t be read; it is marked where it stands.
            </p>
          )}
          <div class="buttons">
            <button type="submit" class="button first" disabled={busy}>
              {busy ? 'Saving…' : 'Start with these targets'}
            </button>
          </div>
        </div>
      </Form>
    </Page>
  );
}

/** Leads to what is missing, once it is marked. */
function focusFirstWrong(): void {
  document
    .querySelector<HTMLElement>('.set-up :is([aria-invalid="true"], fieldset:has(.wrong) input)')
    ?.focus();
}
