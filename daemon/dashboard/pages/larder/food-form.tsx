import { foodStateSchema } from '@platewright/core/records/food.ts';
import type { LarderView } from '@platewright/core/views/larder-types.ts';
import { useState } from 'preact/hooks';
import { edit, sendEdits } from '../../api/edits.ts';
import { Choice } from '../../forms/choice.tsx';
import { EditForm } from '../../forms/edit-form.tsx';
import { Field } from '../../forms/field.tsx';
import { Select } from '../../forms/select.tsx';
import { keptDraft } from '../../state/draft.ts';
import { useSubmit } from '../../state/use-submit.ts';
import { draftOfFood, type FoodDraft, readFood } from './food-draft.ts';
import { LabelNote } from './label-note.tsx';
import { NutrientFields } from './nutrient-fields.tsx';
import { PortionsField } from './portions-field.tsx';

const states = foodStateSchema.options.map((value) => ({ value, label: value }));

const useDraft = keptDraft<FoodDraft>();

/** A food typed from its label, checked while it is typed. */
export function FoodForm({
  larder,
  editing,
  close,
}: {
  larder: LarderView;
  editing: string;
  close: () => void;
}) {
  const { energy } = larder.units;
  const original = larder.foods.find(({ food }) => food.id === editing.replace(/^copy:/, ''))?.food;
  const { draft, change, forget, ids } = useDraft(
    `${larder.athlete} ${editing} ${JSON.stringify(original)} ${energy}`,
    () => draftOfFood(original, energy),
  );
  const [tried, setTried] = useState(false);
  const submit = useSubmit({ ids });
  const leave = () => {
    forget();
    close();
  };
  const fields = readFood(draft, energy, original);
  const changed = original && editing === original.id ? original.id : null;
  // Where the names are the same, nothing that is typed or shown tells which food is meant. One that was stored unheard is this one.
  const taken = larder.foods.some(
    ({ food, hidden }) =>
      !hidden &&
      food.id !== changed &&
      ![...ids.values()].includes(food.id) &&
      sameName(food.name, draft.name),
  );

  const save = async () => {
    setTried(true);
    if (!fields || taken) return;
    const id = changed ?? submit.idOf();
    // A field that is not sent stays as it was.
    const all = changed === null ? fields : { ...fields, carbohydrate: fields.carbohydrate ?? null };
    if (await submit.run(() => sendEdits([edit('food', larder.athlete, id, all)]))) leave();
  };

  return (
    <EditForm what="the food" submit={submit} save={save} ready close={leave}>
      <div class="fields">
        <Field
          label="Name"
          value={draft.name}
          onText={(name) => change({ name })}
          wrong={tried ? wrongName(draft.name, taken) : undefined}
        />
        <Field
          label="Other words for it"
          value={draft.aliases}
          onText={(aliases) => change({ aliases })}
          hint="What you might type, with commas between."
        />
        <Select label="State" value={draft.state} options={states} onChoice={(state) => change({ state })} />
        <Choice
          legend="Kind of carbohydrate"
          value={draft.carbohydrate}
          options={[
            { value: 'unsaid', label: 'unsaid' },
            { value: 'complex', label: 'complex' },
            { value: 'quick', label: 'quick' },
          ]}
          onChoice={(carbohydrate) => change({ carbohydrate })}
        />
      </div>
      <NutrientFields draft={draft} set={change} energyUnit={energy} tried={tried} />
      <LabelNote draft={draft} energyUnit={energy} />
      <PortionsField portions={draft.portions} onPortions={(portions) => change({ portions })} />
      {tried && !fields && (
        <p class="wrong" role="alert">
          A name, energy, protein, carbohydrate and fat are needed, and a portion needs a name and grams.
        </p>
      )}
    </EditForm>
  );
}

function sameName(a: string, b: string): boolean {
  return a.trim().toLowerCase() === b.trim().toLowerCase();
}

function wrongName(name: string, taken: boolean): string | undefined {
  if (taken) return 'Another food is called so: add what tells this one from it, or hide the other.';
  return name.trim() === '' ? 'Type a name.' : undefined;
}
