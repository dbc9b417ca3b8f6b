import { indexFoods } from '@platewright/core/foods/search/food-index.ts';
import { searchFoods } from '@platewright/core/foods/search/search.ts';
import type { LarderFood, LarderView } from '@platewright/core/views/larder-types.ts';
import { useMemo, useState } from 'preact/hooks';
import { Choice } from '../../forms/choice.tsx';
import { Field } from '../../forms/field.tsx';
import { FoodRow } from './food-row.tsx';

type Which = 'all' | 'own' | 'hidden' | 'label';

const tests: Record<Which, (food: LarderFood) => boolean> = {
  all: (food) => !food.hidden,
  own: (food) => food.own && !food.hidden,
  hidden: (food) => food.hidden,
  label: (food) => !food.labelAgrees && !food.hidden,
};

/** More rows at once than anyone reads only make the page slow. */
const mostRows = 120;

/** The foods of the larder, searched as the typed line searches them. */
export function FoodList({ larder, edit }: { larder: LarderView; edit: (food: string) => void }) {
  const [query, setQuery] = useState('');
  const [which, setWhich] = useState<Which>('all');
  const listed = useMemo(() => larder.foods.filter(tests[which]), [larder, which]);
  // The search leaves hidden foods out, and here they can be looked for.
  const index = useMemo(() => indexFoods(listed.map(({ food }) => ({ ...food, hidden: false }))), [listed]);
  const shown = useMemo(() => {
    if (query.trim() === '') return listed;
    const byId = new Map(listed.map((row) => [row.food.id, row]));
    return searchFoods(index, query, { limit: mostRows }).flatMap(({ food }) => byId.get(food.id) ?? []);
  }, [listed, index, query]);

  return (
    <>
      <search class="filters">
        <Field label="Find a food" type="search" value={query} onText={setQuery} autocomplete="off" />
        <Choice
          legend="Show"
          value={which}
          options={[
            { value: 'all', label: 'All' },
            { value: 'own', label: 'Own' },
            { value: 'hidden', label: 'Hidden' },
            { value: 'label', label: 'Label to check' },
          ]}
          onChoice={setWhich}
        />
      </search>
      {shown.length === 0 ? (
        <p class="soft">{query ? `Nothing here is called “${query}”.` : emptyWords[which]}</p>
      ) : (
        <ul class="foods">
          <li class="food food-columns" aria-hidden="true">
            <span class="food-name">Food</span>
            <span class="figures">
              <span>Protein</span>
              <span>Carb.</span>
              <span>Fat</span>
              <span>{larder.units.energy}</span>
            </span>
            <span />
          </li>
          {shown.slice(0, mostRows).map((row) => (
            <FoodRow key={row.food.id} row={row} larder={larder} edit={edit} />
          ))}
        </ul>
      )}
      {shown.length > mostRows && (
        <p class="hint">{shown.length - mostRows} more; type a name to find them.</p>
      )}
    </>
  );
}

const emptyWords: Record<Which, string> = {
  all: 'No food is in the larder yet. Add one, with the figures of its label.',
  own: 'You have no food of your own yet. Add one, with the figures of its label.',
  hidden: 'Nothing is hidden. A hidden food is kept, but not offered when you type.',
  label: 'Every label agrees: declared energy is what protein, carbohydrate and fat account for.',
};
