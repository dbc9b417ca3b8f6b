import type { ComponentChildren } from 'preact';
import type { EnergyUnit } from '../src/units/energy.ts';
import type { EntryView } from '../src/views/types.ts';
import { Figures } from './figures.tsx';
import { GramsCell } from './grams-cell.tsx';

interface EntryRowProps {
  entry: EntryView;
  energyUnit: EnergyUnit;
  /** Grams can be edited in place when given. */
  onGrams?: (grams: number) => void;
  /** Buttons of the row: move, remove. */
  children?: ComponentChildren;
}

/** One food eaten: name, amount, its four figures, and what can be done with it. A list item. */
export function EntryRow({ entry, energyUnit, onGrams, children }: EntryRowProps) {
  return (
    <li class="entry">
      <span class="entry-name">{entry.name}</span>
      <GramsCell entry={entry} {...(onGrams && { onGrams })} />
      <Figures
        proteinG={entry.proteinG}
        carbohydrateG={entry.carbohydrateG}
        fatG={entry.fatG}
        energyKcal={entry.energyKcal}
        energyUnit={energyUnit}
      />
      <span class="entry-actions">{children}</span>
    </li>
  );
}
