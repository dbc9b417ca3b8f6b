import { formatDecimal } from '../src/units/decimal.ts';
import { dateTicks, linearScale, type Scale, ticks } from './scale.ts';

/** The drawing area of a chart of body mass over days, in pixels, with its two scales. */
export interface Frame {
  height: number;
  left: number;
  right: number;
  bottom: number;
  x: Scale;
  y: Scale;
  /** Date at the left edge, and how many days the axis spans. */
  start: string;
  days: number;
  masses: readonly [number, number];
}

/** Lays out a chart of `width` × `height` pixels; `below` is the room under the plot for the time axis. */
export function massFrame(
  width: number,
  height: number,
  start: string,
  days: number,
  masses: readonly [number, number],
  below: number,
): Frame {
  const margin = (masses[1] - masses[0] || 1) * 0.06;
  const padded = [masses[0] - margin, masses[1] + margin] as const;
  const [left, right, top, bottom] = [44, width - 10, 18, height - below];
  return {
    ...{ height, left, right, bottom, start, days, masses: padded },
    x: linearScale([0, days], [left, right]),
    y: linearScale(padded, [bottom, top]),
  };
}

/** Hairlines with body mass at the left, and dates along the foot. */
export function MassAxes({ frame, unit }: { frame: Frame; unit: string }) {
  const marks = ticks(frame.masses[0], frame.masses[1], Math.max(3, Math.round(frame.height / 60)));
  const step = (marks[1] ?? 1) - (marks[0] ?? 0);
  const dates = dateTicks(frame.start, frame.days, Math.floor((frame.right - frame.left) / 52));
  return (
    <g class="chart-axes">
      <text x={frame.left - 6} y={10} text-anchor="end">
        {unit}
      </text>
      {marks.map((mass) => (
        <g key={mass}>
          <line x1={frame.left} x2={frame.right} y1={frame.y(mass)} y2={frame.y(mass)} />
          <text x={frame.left - 6} y={frame.y(mass) + 4} text-anchor="end">
            {formatDecimal(mass, step < 1 ? 1 : 0)}
          </text>
        </g>
      ))}
      <line class="chart-foot" x1={frame.left} x2={frame.right} y1={frame.bottom} y2={frame.bottom} />
      {dates.map(({ day, label }) => (
        <g key={day}>
          <line
            class="chart-foot"
            x1={frame.x(day)}
            x2={frame.x(day)}
            y1={frame.bottom}
            y2={frame.bottom + 4}
          />
          <text x={frame.x(day)} y={frame.height - 4} text-anchor={anchorAt(frame, frame.x(day))}>
            {label}
          </text>
        </g>
      ))}
    </g>
  );
}

function anchorAt(frame: Frame, x: number): 'start' | 'middle' | 'end' {
  if (x > frame.right - 14) return 'end';
  return x < frame.left + 14 ? 'start' : 'middle';
}
