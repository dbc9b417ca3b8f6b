import { Figures } from '@platewright/core/ui/figures.tsx';
import type { LarderFood, LarderView } from '@platewright/core/views/larder-types.ts';
import { edit as editOf } from '../../api/edits.ts';
import { Remove } from '../../shell/remove.tsx';
import { RowAction } from '../../shell/row-action.tsx';
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
        <RowAction
          name={own ? 'Edit' : 'Copy'}
          what={food.name}
          run={() => edit(own ? food.id : `copy:${food.id}`)}
        />
        <RowAction
          name={hidden ? 'Offer again' : 'Hide'}
          what={food.name}
          run={() =>
            void act([hide(!hidden)], hidden ? `${food.name} is offered again.` : `Hid ${food.name}.`, [
              hide(hidden),
            ])
          }
        />
        {own && <Remove kind="food" id={food.id} what={food.name} />}
      </span>
    </li>
  );
}
