import type { CallForecast, ForecastFan } from '../src/call/output.ts';
import { daysBetween } from '../src/season/dates.ts';
import { type BodyMassUnit, bodyMassIn, formatBodyMass } from '../src/units/mass.ts';
import { formatDayOfYear } from './format-date.ts';
import { MassAxes, massFrame } from './mass-axes.tsx';
import { gramsFigure, massFigure } from './number.ts';
import { edgesPath, linePath, mapEstimate, pathThrough, ribbonPath } from './paths.ts';
import { useWidth } from './use-width.ts';

interface FanProps {
  forecast: CallForecast;
  /** The pace band, % of body mass a week. */
  band: { low: number; high: number };
  unit: BodyMassUnit;
}

/**
 * Body mass for the next four weeks: the new mark as a line in its ribbon of 90 %, the old mark as a dashed line
 * between dashed edges, the pace band as the wedge under both.
 */
export function Fan({ forecast, band, unit }: FanProps) {
  const [box, width] = useWidth(560);
  const mass = (kg: number) => bodyMassIn(kg, unit);
  const [now, then] = [forecast.atNewMark, forecast.atOldMark];
  const start = now.points[0]?.day ?? '';
  const toLine = (fan: ForecastFan) =>
    fan.points.map((point) => ({
      day: daysBetween(start, point.day),
      mass: mapEstimate(point.massKg, mass),
    }));
  const [newLine, oldLine] = [toLine(now), toLine(then)];
  const days = newLine.at(-1)?.day ?? 28;
  const from = newLine[0]?.mass.mean ?? 0;
  const after = (percent: number) => from * (1 + (percent / 100) * (days / 7));
  const wedge = [after(band.low), after(band.high)] as const;
  const heights = [...newLine, ...oldLine].flatMap(({ mass }) => [mass.interval90.low, mass.interval90.high]);
  const frame = massFrame(
    width,
    width < 480 ? 220 : 280,
    start,
    days,
    [Math.min(...heights, ...wedge), Math.max(...heights, ...wedge)],
    24,
  );
  const differs = now.markG !== then.markG;

  return (
    <div class="chart" ref={box}>
      <svg width={width} height={frame.height} role="img" aria-label={fanWords(forecast, unit)}>
        <MassAxes frame={frame} unit={unit} />
        <path
          class="chart-wedge"
          d={pathThrough(frame, [
            [days, wedge[0]],
            [0, from],
            [days, wedge[1]],
          ])}
        />
        <path class="chart-ribbon" d={ribbonPath(frame, newLine)} />
        {differs && (
          <>
            <path class="chart-edge" d={edgesPath(frame, oldLine)} />
            <path class="chart-line old" d={linePath(frame, oldLine)} />
          </>
        )}
        <path class="chart-line" d={linePath(frame, newLine)} />
      </svg>
    </div>
  );
}

/** The forecast in sentences. */
function fanWords({ atNewMark, atOldMark }: CallForecast, unit: BodyMassUnit): string {
  const fans = atNewMark.markG === atOldMark.markG ? [atNewMark] : [atNewMark, atOldMark];
  const sentences = fans.flatMap((fan) => {
    const last = fan.points.at(-1);
    if (!last) return [];
    const { low, high } = last.massKg.interval90;
    const range = `90 % interval ${massFigure(low, unit)} to ${massFigure(high, unit)}`;
    return `At ${gramsFigure(fan.markG)} g carbohydrate: ${formatBodyMass(last.massKg.mean, unit)} on ${formatDayOfYear(last.day)}, ${range}.`;
  });
  return ['Forecast of four weeks.', ...sentences].join(' ');
}
