import { weighedFigure } from '@platewright/core/ui/number.ts';
import { useEffect, useRef } from 'preact/hooks';
import type { Option } from './options.ts';

interface OptionRowProps {
  option: Option;
  id: string;
  active: boolean;
  choose: () => void;
}

/** One row of the list under the typed line. A press chooses without taking the focus from the line. */
export function OptionRow({ option, id, active, choose }: OptionRowProps) {
  const row = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (active) row.current?.scrollIntoView({ block: 'nearest' });
  }, [active]);
  return (
    <div
      ref={row}
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
          <kbd>Alt {option.digit}</kbd>
          <span class="option-name">
            {option.meal.name}
            <span class="unseen">, standing meal</span>
          </span>
        </>
      );
    case 'suggestion': {
      const { amount, grams, name } = option.suggestion;
      return (
        <>
          <span class="soft">{amount ?? `${weighedFigure(grams)} g`}</span>
          <span class="option-name">{name}</span>
        </>
      );
    }
    case 'food':
      return <span class="option-name">{option.food.name}</span>;
  }
}
