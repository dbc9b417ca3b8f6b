import { daysBetween } from '../src/season/dates.ts';
import { type BodyMassUnit, bodyMassIn } from '../src/units/mass.ts';
import type { BodyPoint, BodyView } from '../src/views/body-types.ts';
import { bodyweightWords } from './bodyweight-words.ts';
import { CallFlag } from './call-flag.tsx';
import { MassAxes, massFrame } from './mass-axes.tsx';
import { linePath, mapEstimate, pathThrough, ribbonPath } from './paths.ts';
import { useWidth } from './use-width.ts';

interface BodyweightLineProps {
  /** Oldest first, no date left out, at least one. */
  points: readonly BodyPoint[];
  wedge: BodyView['wedge'];
  flags: BodyView['flags'];
  unit: BodyMassUnit;
}

/**
 * The bodyweight line: weigh-ins as small marks, the line over its ribbon of 90 %, the pace band as a dashed wedge and
 * the weekly calls as flags on the time axis.
 */
export function BodyweightLine({ points, wedge, flags, unit }: BodyweightLineProps) {
  const [box, width] = useWidth(640);
  const start = points[0]?.date ?? '';
  const last = points.at(-1)?.date ?? start;
  const dayOf = (date: string) => daysBetween(start, date);
  const mass = (kg: number) => bodyMassIn(kg, unit);

  const line = points.map((point) => ({
    day: dayOf(point.date),
    mass: mapEstimate(point.lineKg, mass),
  }));
  // One date alone has a line and a ribbon too: half a day of them.
  const drawn =
    line.length === 1 ? [0, 0.5].flatMap((day) => line.map((point) => ({ ...point, day }))) : line;
  const shownWedge = wedge && wedge.to >= start ? wedge : null;
  const end = shownWedge && shownWedge.to > last ? shownWedge.to : last;
  const heights = [
    ...line.flatMap((point) => [point.mass.interval90.low, point.mass.interval90.high]),
    ...points.flatMap((point) => point.weighIns.map((weighIn) => mass(weighIn.kg))),
    ...(shownWedge ? [mass(shownWedge.lowKg), mass(shownWedge.highKg), mass(shownWedge.fromKg)] : []),
  ];
  const frame = massFrame(
    width,
    width < 480 ? 260 : 340,
    start,
    Math.max(1, dayOf(end)),
    [Math.min(...heights), Math.max(...heights)],
    flags.length > 0 ? 48 : 24,
  );
  const radius = width / Math.max(1, points.length) > 4 ? 2 : 1.4;

  return (
    <div class="chart" ref={box}>
      <svg
        width={width}
        height={frame.height}
        role="img"
        aria-label={bodyweightWords(points, wedge, flags, unit)}
      >
        <MassAxes frame={frame} unit={unit} />
        {shownWedge && (
          <path
            class="chart-wedge"
            d={pathThrough(frame, [
              [dayOf(shownWedge.to), mass(shownWedge.lowKg)],
              [dayOf(shownWedge.from), mass(shownWedge.fromKg)],
              [dayOf(shownWedge.to), mass(shownWedge.highKg)],
            ])}
          />
        )}
        <path class="chart-ribbon" d={ribbonPath(frame, drawn)} />
        {points.map((point) =>
          point.weighIns.map((weighIn) => (
            <circle
              key={weighIn.id}
              class={point.used === 'odd' || point.used === 'part' ? 'chart-mark doubted' : 'chart-mark'}
              cx={frame.x(dayOf(point.date))}
              cy={frame.y(mass(weighIn.kg))}
              r={radius}
            />
          )),
        )}
        <path class="chart-line" d={linePath(frame, drawn)} />
        {flags
          .filter((flag) => flag.date >= start && flag.date <= end)
          .map((flag) => (
            <CallFlag key={flag.date} flag={flag} x={frame.x(dayOf(flag.date))} y={frame.bottom} />
          ))}
      </svg>
    </div>
  );
}
