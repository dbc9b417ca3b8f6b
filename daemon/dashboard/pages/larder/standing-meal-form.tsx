import type { FoodHabit } from '@platewright/core/foods/ranking.ts';
import { replaceItem } from '@platewright/core/foods/typed-line/complete.ts';
import { formatLine } from '@platewright/core/foods/typed-line/format.ts';
import { readyItems } from '@platewright/core/foods/typed-line/read-line.ts';
import { pasteLines } from '@platewright/core/ui/paste-lines.ts';
import type { LarderView, StandingMealView } from '@platewright/core/views/larder-types.ts';
import { edit, sendEdits } from '../../api/edits.ts';
import { EditForm } from '../../forms/edit-form.tsx';
import { Field } from '../../forms/field.tsx';
import { keptDraft } from '../../state/draft.ts';
import { useSubmit } from '../../state/use-submit.ts';
import { ReadingList } from '../../typed-line/reading-list.tsx';
import { useReading, useTypedLarder } from '../../typed-line/use-reading.ts';

const useDraft = keptDraft<{ name: string; line: string }>();

interface StandingMealFormProps {
  larder: LarderView;
  /** Of all meals. */
  habits: readonly FoodHabit[];
  meal: StandingMealView | null;
  close: () => void;
}

/** A standing meal: its name, and a typed line of what is in it. */
export function StandingMealForm({ larder, habits, meal, close }: StandingMealFormProps) {
  // A food that is no longer offered is still part of the meal.
  const typedLarder = useTypedLarder(larder, { habits, kept: meal?.items.map(({ food }) => food) });
  const foods = new Map(larder.foods.map(({ food }) => [food.id, food]));
  const { draft, change, forget, ids } = useDraft(`${larder.athlete} ${JSON.stringify(meal)}`, () => {
    const items = meal?.items.flatMap(({ food: id, grams }) => {
      const food = foods.get(id);
      return food ? [{ food, grams, amount: null }] : [];
    });
    return { name: meal?.name ?? '', line: formatLine(items ?? [], typedLarder) };
  });
  const { name, line } = draft;
  const setLine = (to: string) => change({ line: to });
  const items = useReading(line, typedLarder);
  const read = readyItems(items);
  const submit = useSubmit({ ids });
  const leave = () => {
    forget();
    close();
  };
  const whole = name.trim() !== '' && read.length > 0 && read.length === items.length;

  const save = async () => {
    if (!whole) return;
    const fields = { name, items: read.map(({ food, grams }) => ({ food: food.id, grams })) };
    const id = meal?.id ?? submit.idOf();
    if (await submit.run(() => sendEdits([edit('standing-meal', larder.athlete, id, fields)]))) leave();
  };

  return (
    <EditForm what="the standing meal" submit={submit} save={save} ready={whole} close={leave}>
      <Field label="Name" value={name} onText={(to) => change({ name: to })} />
      <Field
        label="What is in it"
        value={line}
        onText={setLine}
        onPaste={pasteLines}
        placeholder="250 greek yogurt, 60 oats, 1 banana"
        spellcheck={false}
        autocomplete="off"
      />
      <ReadingList
        items={items}
        energyUnit={larder.units.energy}
        choose={(item, food) => setLine(replaceItem(line, item.end, food, typedLarder).line)}
      />
    </EditForm>
  );
}
