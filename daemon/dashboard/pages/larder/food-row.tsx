import { Figures } from '@platewright/core/ui/figures.tsx';
import type { LarderFood, LarderView } from '@platewright/core/views/larder-types.ts';
import { edit as editOf, removal } from '../../api/edits.ts';
import { useNotice } from '../../state/notice.tsx';

interface FoodRowProps {
  row: LarderFood;
  larder: LarderView;
  edit: (food: string) => void;
}

/** One food with its figures, its portions, its label check, and what can be done with it. */
export function FoodRow({ row, larder, edit }: FoodRowProps) {
  const { act } = useNotice();
  const { food, own, hidden, labelAgrees, labelWords } = row;
  const { athlete } = larder;
  const hide = (to: boolean) => editOf('food', athlete, food.id, { hidden: to });
  const portions = food.portions.map(({ name, grams }) => `${name} ${grams} g`).join(', ');
  return (
    <li class="food">
      <div class="food-name">
        {food.name}{' '}
        <span class="soft small">
          {[
            !food.name.includes(food.state) && food.state,
            food.carbohydrate && `${food.carbohydrate} carbohydrate`,
            portions,
          ]
            .filter(Boolean)
            .join('; ')}
          {food.ndb && ` [${food.ndb}]`}
        </span>
        {!labelAgrees && <p class="wrong">{labelWords}</p>}
      </div>
      <Figures {...food.per100} energyUnit={larder.units.energy} />
      <span class="food-actions">
        <button type="button" class="link small" onClick={() => edit(own ? food.id : `copy:${food.id}`)}>
          {own ? 'Edit' : 'Copy'}
          <span class="unseen"> {food.name}</span>
        </button>
        <button
          type="button"
          class="link small"
          onClick={() =>
            void act([hide(!hidden)], hidden ? `${food.name} is offered again.` : `Hid ${food.name}.`, [
              hide(hidden),
            ])
          }
        >
          {hidden ? 'Offer again' : 'Hide'}
          <span class="unseen"> {food.name}</span>
        </button>
        {own && (
          <button
            type="button"
            class="link small"
            onClick={() =>
              void act([removal('food', athlete, food.id, true)], `Removed ${food.name}.`, [
                removal('food', athlete, food.id, false),
              ])
            }
          >
            Remove<span class="unseen"> {food.name}</span>
          </button>
        )}
      </span>
    </li>
  );
}
