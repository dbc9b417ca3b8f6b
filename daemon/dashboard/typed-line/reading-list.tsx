import type { Food } from '@platewright/core/records/kinds.ts';
import { Figures } from '@platewright/core/ui/figures.tsx';
import { weighedFigure } from '@platewright/core/ui/number.ts';
import type { EnergyUnit } from '@platewright/core/units/energy.ts';
import { sumMacros } from '@platewright/core/views/macros.ts';
import type { ReadItem } from './use-reading.ts';

interface ReadingListProps {
  items: readonly ReadItem[];
  energyUnit: EnergyUnit;
  /** A food was chosen for an item that may mean several. */
  choose: (item: ReadItem, food: Food) => void;
}

/** What a typed line was read as, item by item; what can't be read says why and what to do. */
export function ReadingList({ items, energyUnit, choose }: ReadingListProps) {
  return (
    <ul class="reading" aria-live="polite">
      {items.map((item) => (
        <li
          key={`${item.start} ${item.text}`}
          class={item.status === 'ok' ? 'reading-item' : 'reading-item asks'}
        >
          {item.status === 'ok' ? (
            <>
              <span>
                {item.amount ? `${item.amount} · ` : ''}
                {weighedFigure(item.grams)} g {item.food.name}
              </span>
              <Figures
                {...sumMacros([{ per100: item.food.per100, grams: item.grams }])}
                energyUnit={energyUnit}
              />
            </>
          ) : (
            <>
              <span class="wrong">
                “{item.text}”: {item.message}
              </span>
              {item.status === 'ambiguous' && (
                <span class="buttons">
                  {item.choices.map((food) => (
                    <button
                      key={food.id}
                      type="button"
                      class="button small"
                      onClick={({ currentTarget }) => {
                        focusLine(currentTarget.form);
                        choose(item, food);
                      }}
                    >
                      {food.name}
                    </button>
                  ))}
                </span>
              )}
            </>
          )}
        </li>
      ))}
    </ul>
  );
}

/** The button that is pressed goes, and the focus with it: the typed line, whose spelling nobody checks, takes it. */
function focusLine(form: HTMLFormElement | null): void {
  form?.querySelector<HTMLInputElement>('input[spellcheck="false"]')?.focus();
}
