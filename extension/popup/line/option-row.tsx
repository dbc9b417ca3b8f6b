import { gramsFigure } from '@platewright/core/ui/number.ts';
import type { Option } from './options.ts';

interface OptionRowProps {
  option: Option;
  id: string;
  active: boolean;
  choose: () => void;
}

/** One row of the list under the typed line. The pointer chooses without taking the focus from the line. */
export function OptionRow({ option, id, active, choose }: OptionRowProps) {
  return (
    <div
      id={id}
      role="option"
      tabIndex={-1}
      aria-selected={active}
      class="option"
      onMouseDown={(event) => {
        event.preventDefault();
        choose();
      }}
    >
      <OptionText option={option} />
    </div>
  );
}

function OptionText({ option }: { option: Option }) {
  switch (option.kind) {
    case 'standing':
      return (
        <>
          <span class="option-amount">
            <kbd>Alt {option.digit}</kbd>
          </span>
          <span class="option-name">{option.meal.name}</span>
          <span class="option-note">
            standing meal, {option.meal.items.length} {option.meal.items.length === 1 ? 'food' : 'foods'}
          </span>
        </>
      );
    case 'suggestion': {
      const { amount, grams, name } = option.suggestion;
      return (
        <>
          <span class="option-amount">{amount ?? `${gramsFigure(grams)} g`}</span>
          <span class="option-name">{name}</span>
        </>
      );
    }
    case 'food':
      return (
        <>
          <span class="option-amount" />
          <span class="option-name">{option.food.name}</span>
        </>
      );
  }
}
