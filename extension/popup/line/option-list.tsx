import { OptionRow } from './option-row.tsx';
import type { Option } from './options.ts';

export const OPTION_LIST = 'line-options';

export function optionId(place: number): string {
  return `${OPTION_LIST}-${place}`;
}

interface OptionListProps {
  options: readonly Option[];
  active: number;
  choose: (option: Option) => void;
}

/** What the typed line offers. The focus stays in the line, which points at one of these. */
export function OptionList({ options, active, choose }: OptionListProps) {
  if (options.length === 0) return null;
  const short = options[0]?.kind === 'food' ? 'options' : 'options short';
  // Two columns, filled one after the other, so that an arrow down goes down.
  const rows = { '--rows': Math.ceil(options.length / 2) };
  return (
    <div id={OPTION_LIST} class={short} style={rows} role="listbox" aria-label="Foods">
      {options.map((option, i) => (
        <OptionRow
          key={option.kind === 'standing' ? option.meal.id : option.food.id}
          id={optionId(i)}
          option={option}
          active={i === active}
          choose={() => choose(option)}
        />
      ))}
    </div>
  );
}
