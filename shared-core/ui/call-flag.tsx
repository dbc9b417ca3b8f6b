import type { BodyView } from '../src/views/body-types.ts';

/**
 * A weekly call on the time axis, as a flag under it: the pennant points up or down with the mark, lies flat for a
 * hold, and is hollow when the call was declined.
 */
export function CallFlag({ flag, x, y }: { flag: BodyView['flags'][number]; x: number; y: number }) {
  const pennant = pennants[flag.verdict];
  return (
    <g
      class={flag.decision === 'declined' ? 'chart-flag hollow' : 'chart-flag'}
      transform={`translate(${x.toFixed(1)} ${y.toFixed(1)})`}
    >
      <path class="chart-pole" d="M0 2v18" />
      <path d={pennant} />
    </g>
  );
}

const pennants: Record<BodyView['flags'][number]['verdict'], string> = {
  up: 'M0 14l4-7l4 7z',
  down: 'M0 10l4 7l4-7z',
  hold: 'M0 11h7v2.5h-7z',
  'not-enough': 'M0 12h3v1h-3z',
};
