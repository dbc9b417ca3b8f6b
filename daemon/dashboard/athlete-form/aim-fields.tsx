import { parseDecimalIn } from '@platewright/core/units/decimal.ts';
import { formatBodyMassChange, parseBodyMass } from '@platewright/core/units/mass.ts';
import { weeksPerMonth } from '@platewright/core/units/percent.ts';
import { Choice } from '../forms/choice.tsx';
import { Field } from '../forms/field.tsx';
import { type AthleteDraft, draftOfAim, type PhaseDraft } from './draft.ts';
import { tied } from './part.ts';

interface AimFieldsProps {
  phase: PhaseDraft;
  athlete: Pick<AthleteDraft, 'mass' | 'massUnit'>;
  set: (phase: PhaseDraft) => void;
  wrong: Partial<Record<keyof PhaseDraft, string>>;
  /** With the date of the start, and a contest date whatever the aim is. */
  whole?: boolean;
}

/** The phase and its aim: choosing a phase sets the pace it usually starts with. */
export function AimFields({ phase, athlete, set, wrong, whole }: AimFieldsProps) {
  const part = {
    draft: phase,
    set: (change: Partial<PhaseDraft>) => set({ ...phase, ...change }),
    wrong,
  };
  const [low, high] = [tied(part, 'bandLow'), tied(part, 'bandHigh')];
  return (
    <div class="fields">
      <Choice
        legend="Phase"
        value={phase.aim}
        options={[
          { value: 'off-season', label: 'Off-season' },
          { value: 'hold', label: 'Hold' },
          { value: 'pre-contest', label: 'Pre-contest' },
        ]}
        onChoice={(aim) => {
          const { contestDate, startMark } = phase;
          set({ ...draftOfAim(aim, phase.from), contestDate, startMark });
        }}
      />
      <Field
        label="Pace aimed for"
        {...tied(part, 'pace')}
        unit="% a week"
        hint={monthly(phase.pace, athlete)}
        inputMode="text"
      />
      <fieldset class="field">
        <legend>Pace band</legend>
        <span class="with-unit">
          <input
            class="input"
            aria-label="Low end of the pace band, % a week"
            value={low.value}
            aria-invalid={Boolean(low.wrong)}
            onInput={(event) => low.onText(event.currentTarget.value)}
          />
          <span>to</span>
          <input
            class="input"
            aria-label="High end of the pace band, % a week"
            value={high.value}
            aria-invalid={Boolean(high.wrong)}
            onInput={(event) => high.onText(event.currentTarget.value)}
          />
        </span>
        {(low.wrong ?? high.wrong) && <p class="wrong">{low.wrong ?? high.wrong}</p>}
      </fieldset>
      <Field
        label="Starting mark"
        {...tied(part, 'startMark')}
        unit="g"
        inputMode="numeric"
        placeholder="by the rule"
        hint="Carbohydrate a day, if you know it."
      />
      {whole && <Field label="From" type="date" {...tied(part, 'from')} />}
      {(whole || phase.aim === 'pre-contest') && (
        <Field label="Contest date" type="date" {...tied(part, 'contestDate')} />
      )}
    </div>
  );
}

/** What the pace means on the scale in a month. */
function monthly(pace: string, { mass, massUnit }: Pick<AthleteDraft, 'mass' | 'massUnit'>): string {
  const [percent, kg] = [parseDecimalIn(pace, '%'), parseBodyMass(mass, massUnit)];
  if (percent === undefined || kg === undefined) return 'Change of body mass; negative to lose.';
  return `${formatBodyMassChange((percent / 100) * kg * weeksPerMonth, massUnit)} a month`;
}
