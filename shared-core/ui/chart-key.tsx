import type { ComponentChildren } from 'preact';

type Sign = 'mark' | 'line' | 'old' | 'wedge' | 'flag';

/** One row of signs and their meaning under a chart. */
export function ChartKey({ signs }: { signs: readonly { sign: Sign; means: string }[] }) {
  return (
    <ul class="chart-key">
      {signs.map(({ sign, means }) => (
        <li key={sign}>
          <svg width="22" height="12" aria-hidden="true">
            {drawings[sign]}
          </svg>
          {means}
        </li>
      ))}
    </ul>
  );
}

const drawings: Record<Sign, ComponentChildren> = {
  mark: <circle class="chart-mark" cx="11" cy="6" r="2" />,
  line: (
    <>
      <path class="chart-ribbon" d="M0 1h22v10h-22z" />
      <path class="chart-line" d="M0 6h22" />
    </>
  ),
  old: <path class="chart-line old" d="M0 6h22" />,
  wedge: <path class="chart-wedge" d="M22 1L1 6L22 11" />,
  flag: <path class="chart-flag" d="M7 9l4-7l4 7z" />,
};
