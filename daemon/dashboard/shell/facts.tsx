import type { Estimate } from '@platewright/core/trend/estimate.ts';
import type { ComponentChildren } from 'preact';
import { range90 } from './range.ts';

/** A row of figures between rules. */
export function Facts({ children }: { children: ComponentChildren }) {
  return <dl class="fact-row">{children}</dl>;
}

interface FactProps {
  name: string;
  figure: string;
  unit: string;
  /** Its interval or where it comes from. */
  beside?: string;
  /** What is aimed for. */
  aim?: string;
}

/** One figure, what it is, and how sure it is. */
export function Fact({ name, figure, unit, beside, aim }: FactProps) {
  return (
    <div class="fact">
      <dt>{name}</dt>
      <dd>
        <span class="figure">{figure}</span> {unit}
      </dd>
      {beside && <dd class="soft small">{beside}</dd>}
      {aim && <dd class="aim small">{aim}</dd>}
    </div>
  );
}

interface EstimatedFactProps extends Omit<FactProps, 'figure' | 'beside'> {
  of: Estimate;
  figure: (value: number) => string;
}

/** One estimate with its interval. */
export function EstimatedFact({ of, figure, ...rest }: EstimatedFactProps) {
  return <Fact figure={figure(of.mean)} beside={range90(of, figure)} {...rest} />;
}
