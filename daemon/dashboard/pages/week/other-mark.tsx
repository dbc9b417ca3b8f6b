import type { WeeklyCall } from '@platewright/core/call/output.ts';
import { mostMarkG } from '@platewright/core/records/limits.ts';
import { parseDecimalIn } from '@platewright/core/units/decimal.ts';
import type { WeekView } from '@platewright/core/views/week-types.ts';
import { useState } from 'preact/hooks';
import { Field } from '../../forms/field.tsx';
import { Form } from '../../forms/form.tsx';
import { AtMark } from './at-mark.tsx';

interface OtherMarkProps {
  week: WeekView;
  call: WeeklyCall;
  busy: boolean;
  set: (markG: number) => void;
}

/** A mark of the athlete's own, with what it would do beside it. */
export function OtherMark({ week, call, busy, set }: OtherMarkProps) {
  const [typed, setTyped] = useState(String(call.carbohydrateG));
  const markG = parseDecimalIn(typed, 'g');
  const right = markG !== undefined && markG > 0 && markG <= mostMarkG;
  return (
    <Form class="fields" opened save={() => right && set(markG)}>
      <Field
        label="Carbohydrate mark"
        value={typed}
        onText={setTyped}
        unit="g a day"
        inputMode="numeric"
        wrong={typed && !right ? `Type grams a day, up to ${mostMarkG}.` : undefined}
      />
      <div class="field-button">
        <button type="submit" class="button" disabled={busy || !right}>
          Set it
        </button>
      </div>
      {right && <AtMark week={week} call={call} markG={markG} />}
    </Form>
  );
}
