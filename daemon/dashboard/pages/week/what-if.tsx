import type { CallForecast, WeeklyCall } from '@platewright/core/call/output.ts';
import { ChartKey } from '@platewright/core/ui/chart-key.tsx';
import { Fan } from '@platewright/core/ui/fan.tsx';
import { gramsFigure, massFigure, paceFigure } from '@platewright/core/ui/number.ts';
import type { WeekView } from '@platewright/core/views/week-types.ts';
import { useId, useMemo, useState } from 'preact/hooks';
import { range90 } from '../../shell/range.ts';
import { fanAt } from './fan-at.ts';

interface WhatIfProps {
  week: WeekView;
  call: WeeklyCall;
  forecast: CallForecast;
}

/** The forecast at the proposed mark and at the one in force, with a slider for any other. */
export function WhatIf({ week, call, forecast }: WhatIfProps) {
  const id = useId();
  const [markG, setMarkG] = useState(call.carbohydrateG);
  const { whatIf, units, aim } = week;
  const fan = useMemo(() => fanAt(whatIf, markG) ?? forecast.atNewMark, [whatIf, markG, forecast]);
  const [low, high] = [whatIf[0]?.markG ?? markG, whatIf.at(-1)?.markG ?? markG];
  const end = fan.points.at(-1)?.massKg;
  const { pacePercentPerWeek: pace } = fan;
  const mass = (kg: number) => massFigure(kg, units.mass);
  return (
    <div class="what-if">
      <div class="what-if-slider">
        <label for={id}>
          What if the mark were <b class="aim">{gramsFigure(fan.markG)} g</b>
        </label>
        <input
          id={id}
          type="range"
          min={low}
          max={high}
          step={5}
          value={markG}
          aria-valuetext={`${gramsFigure(markG)} g carbohydrate a day`}
          onInput={(event) => setMarkG(Number(event.currentTarget.value))}
        />
        <dl class="what-if-facts" aria-live="polite">
          <div>
            <dt>Pace, weeks 2 to 4</dt>
            <dd>
              {paceFigure(pace.mean)} % a week
              <span class="soft small block">{range90(pace, paceFigure)}</span>
            </dd>
          </div>
          {end && (
            <div>
              <dt>After four weeks</dt>
              <dd>
                {mass(end.mean)} {units.mass}
                <span class="soft small block">{range90(end, mass)}</span>
              </dd>
            </div>
          )}
        </dl>
      </div>
      <div class="what-if-chart">
        <Fan forecast={{ atNewMark: fan, atOldMark: forecast.atOldMark }} band={aim.band} unit={units.mass} />
        <ChartKey
          signs={[
            { sign: 'line', means: `at ${gramsFigure(fan.markG)} g, with its 90 % interval` },
            ...(fan.markG === forecast.atOldMark.markG
              ? []
              : [
                  {
                    sign: 'old' as const,
                    means: `at ${gramsFigure(forecast.atOldMark.markG)} g, as before the call`,
                  },
                ]),
            { sign: 'wedge', means: 'pace band' },
          ]}
        />
      </div>
    </div>
  );
}
