import { parseDecimal } from '@platewright/core/units/decimal.ts';
import { useState } from 'preact/hooks';
import { Field } from '../../forms/field.tsx';
import { Form } from '../../forms/form.tsx';

/** A mark of the athlete's own. */
export function OtherMark({
  start,
  busy,
  set,
}: {
  start: number;
  busy: boolean;
  set: (markG: number) => void;
}) {
  const [typed, setTyped] = useState(String(start));
  const markG = parseDecimal(typed);
  const right = markG !== undefined && markG > 0 && markG <= 2000;
  return (
    <Form class="fields" opened save={() => right && set(markG)}>
      <Field
        label="Carbohydrate mark"
        value={typed}
        onText={setTyped}
        unit="g a day"
        inputMode="numeric"
        wrong={typed && !right ? 'Type grams a day, up to 2000.' : undefined}
      />
      <div class="field-button">
        <button type="submit" class="button" disabled={busy || !right}>
          Set it
        </button>
      </div>
    </Form>
  );
}
