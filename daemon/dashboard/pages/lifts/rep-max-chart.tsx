import { daysBetween } from '@platewright/core/season/dates.ts';
import { formatDayOfYear } from '@platewright/core/ui/format-date.ts';
import { MassAxes, massFrame } from '@platewright/core/ui/mass-axes.tsx';
import { linePath, mapEstimate, pathThrough, ribbonPath } from '@platewright/core/ui/paths.ts';
import { useWidth } from '@platewright/core/ui/use-width.ts';
import { formatDecimal, formatSigned } from '@platewright/core/units/decimal.ts';
import { type BodyMassUnit, bodyMassIn } from '@platewright/core/units/mass.ts';
import type { LiftView } from '@platewright/core/views/lifts-types.ts';

interface RepMaxChartProps {
  lift: LiftView;
  /** Left and right end of the time axis, the same for all lifts, so that they can be compared. */
  from: string;
  to: string;
  unit: BodyMassUnit;
}

/** The rep max of each session as a mark, and the trend over the last of them with the interval of its slope. */
export function RepMaxChart({ lift, from, to, unit }: RepMaxChartProps) {
  const [box, width] = useWidth(440);
  const mass = (kg: number) => bodyMassIn(kg, unit);
  const dayOf = (date: string) => daysBetween(from, date);
  const points = lift.points.map(({ date, kg }) => [dayOf(date), mass(kg)] as const);
  const trend = (lift.trend?.line ?? []).map(({ date, kg }) => ({
    day: dayOf(date),
    mass: mapEstimate(kg, mass),
  }));
  const heights = [
    ...points.map(([, height]) => height),
    ...trend.flatMap(({ mass }) => [mass.interval90.low, mass.interval90.high]),
  ];
  const frame = massFrame(
    width,
    170,
    from,
    Math.max(1, dayOf(to)),
    [Math.min(...heights), Math.max(...heights)],
    24,
  );
  return (
    <div class="chart" ref={box}>
      <svg width={width} height={frame.height} role="img" aria-label={words(lift, unit)}>
        <MassAxes frame={frame} unit={unit} />
        <path class="chart-ribbon" d={ribbonPath(frame, trend)} />
        <path class="chart-trace" d={pathThrough(frame, points)} />
        {points.map(([day, height]) => (
          <circle key={day} class="chart-mark" cx={frame.x(day)} cy={frame.y(height)} r={2} />
        ))}
        <path class="chart-line" d={linePath(frame, trend)} />
      </svg>
    </div>
  );
}

/** The chart in sentences. */
function words({ name, points, trend }: LiftView, unit: BodyMassUnit): string {
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last) return `Rep max of ${name}: no set yet.`;
  const mass = (kg: number) => formatDecimal(bodyMassIn(kg, unit));
  const sentences = [
    `Rep max of ${name} on ${points.length} dates: ${mass(first.kg)} ${unit} on ${formatDayOfYear(first.date)},`,
    `${mass(last.kg)} ${unit} on ${formatDayOfYear(last.date)}.`,
  ];
  if (trend) {
    const { mean, interval90 } = trend.percentPerMonth;
    sentences.push(
      `Trend ${formatSigned(mean, 1)} % a month,`,
      `90 % interval ${formatSigned(interval90.low, 1)} to ${formatSigned(interval90.high, 1)}.`,
    );
  }
  return sentences.join(' ');
}
