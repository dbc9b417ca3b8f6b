import type { ReadyItem } from '@platewright/core/foods/typed-line/read-line.ts';
import type { Food } from '@platewright/core/records/kinds.ts';
import { Figures } from '@platewright/core/ui/figures.tsx';
import { weighedFigure } from '@platewright/core/ui/number.ts';
import type { EnergyUnit } from '@platewright/core/units/energy.ts';
import { sumMacros } from '@platewright/core/views/macros.ts';
import { useEffect, useState } from 'preact/hooks';
import type { LarderFood } from '../../replica/larder.ts';
import { readFoods } from '../state/read-foods.ts';

interface DraftProps {
  athlete: string;
  items: readonly ReadyItem<LarderFood>[];
  energyUnit: EnergyUnit;
}

/** How the line is read, before it is logged: each food as it was understood, and what they come to. */
export function Draft({ athlete, items, energyUnit }: DraftProps) {
  const foods = useFoods(athlete, items);
  const known = items.flatMap(({ food, grams }) => {
    const per100 = foods.get(food.id)?.per100;
    return per100 === undefined ? [] : [{ grams, per100 }];
  });
  return (
    <section class="draft" aria-label="As it will be logged">
      <ul class="draft-items">
        {items.map(({ start, food, grams, amount }) => (
          <li key={start}>
            <b>{amount ?? `${weighedFigure(grams)} g`}</b> {food.name}
          </li>
        ))}
      </ul>
      <p class="draft-sum aim">
        <span>
          <kbd>Enter</kbd> logs
        </span>
        {known.length === items.length && <Figures {...sumMacros(known)} energyUnit={energyUnit} />}
      </p>
    </section>
  );
}

/** The foods in the line, read when they are first named. */
function useFoods(athlete: string, items: readonly ReadyItem<LarderFood>[]): ReadonlyMap<string, Food> {
  const [known, setKnown] = useState<ReadonlyMap<string, Food>>(new Map());
  const wanted = items
    .map(({ food }) => food.id)
    .filter((id) => !known.has(id))
    .join();
  useEffect(() => {
    if (wanted === '') return;
    void readFoods(athlete, wanted.split(',')).then((foods) =>
      setKnown((before) => new Map([...before, ...foods])),
    );
  }, [athlete, wanted]);
  return known;
}
