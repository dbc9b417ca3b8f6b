import { counted } from '@platewright/core/call/texts.ts';
import { formatWeekday } from '@platewright/core/ui/format-date.ts';
import { energyFigure, gramsFigure, massFigure } from '@platewright/core/ui/number.ts';
import type { DaysSummary, WeekDayRow, WeekView } from '@platewright/core/views/week-types.ts';
import { hrefOf } from '../../router.ts';

/** The days the call rests on, newest first: what was weighed, eaten and asked for. */
export function WeekDays({ week }: { week: WeekView }) {
  const { units, days } = week;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls must be reachable by keyboard.
    <section class="scroll" aria-label="The last 28 days" tabIndex={0}>
      <table class="ledger days">
        <thead>
          <tr>
            <th scope="col">Date</th>
            {[units.mass, 'Protein', 'Carb.', 'Fat', units.energy, 'Asked'].map((head) => (
              <th key={head} scope="col" class="number">
                {head}
              </th>
            ))}
            <th scope="col">Log</th>
          </tr>
        </thead>
        <tbody>
          {days.toReversed().map((day) => (
            <DayRow key={day.date} day={day} units={units} />
          ))}
        </tbody>
        <tfoot>
          <SumRow name="Mean of 7 days" summary={week.last7} units={units} />
          <SumRow name="Mean of 28 days" summary={week.last28} units={units} />
        </tfoot>
      </table>
    </section>
  );
}

function DayRow({ day, units }: { day: WeekDayRow; units: WeekView['units'] }) {
  return (
    <tr>
      <th scope="row">
        <a href={hrefOf('today', day.date)}>{formatWeekday(day.date)}</a>
        {day.kindOfDay === 'session' && <span class="soft small"> session</span>}
      </th>
      <Eaten of={day} units={units} />
      <td class="number soft">{energyFigure(day.prescribed.energyKcal, units.energy)}</td>
      <td class="soft small">{logWords(day)}</td>
    </tr>
  );
}

function logWords({ intake, complete, completeStated }: WeekDayRow): string {
  if (intake === null) return 'nothing logged';
  if (complete) return completeStated ? 'whole, as you said' : 'whole';
  return completeStated ? 'not all, as you said' : 'looks not whole';
}

function SumRow({ name, summary, units }: { name: string; summary: DaysSummary; units: WeekView['units'] }) {
  const { prescribed, weighIns, completeDates } = summary;
  return (
    <tr>
      <th scope="row">{name}</th>
      <Eaten of={summary} units={units} />
      <td class="number">{prescribed ? energyFigure(prescribed.energyKcal, units.energy) : '–'}</td>
      <td class="small">
        {counted(weighIns, 'weigh-in')}, {counted(completeDates, 'whole day')}
      </td>
    </tr>
  );
}

/** What was weighed and eaten, on a day or in the mean of some. */
function Eaten({ of, units }: { of: WeekDayRow | DaysSummary; units: WeekView['units'] }) {
  const { weightKg, intake } = of;
  const figures = [
    weightKg !== null && massFigure(weightKg, units.mass),
    intake && gramsFigure(intake.proteinG),
    intake && gramsFigure(intake.carbohydrateG),
    intake && gramsFigure(intake.fatG),
    intake && energyFigure(intake.energyKcal, units.energy),
  ];
  return (
    <>
      {figures.map((figure, index) => (
        <td key={index} class="number">
          {figure || '–'}
        </td>
      ))}
    </>
  );
}
