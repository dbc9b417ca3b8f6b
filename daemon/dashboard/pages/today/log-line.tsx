import { replaceItem } from '@platewright/core/foods/typed-line/complete.ts';
import { lineLeft, readyItems } from '@platewright/core/foods/typed-line/read-line.ts';
import { addDays } from '@platewright/core/season/dates.ts';
import { pasteLines } from '@platewright/core/ui/paste-lines.ts';
import type { DayView } from '@platewright/core/views/types.ts';
import { useId, useRef } from 'preact/hooks';
import { sendEdits } from '../../api/edits.ts';
import { readView } from '../../api/views.ts';
import { Form } from '../../forms/form.tsx';
import { hrefOf } from '../../router.ts';
import { ProblemNote } from '../../shell/problem-note.tsx';
import { keptDraft } from '../../state/draft.ts';
import { useNotice } from '../../state/notice.tsx';
import { useSubmit } from '../../state/use-submit.ts';
import { useLoaded } from '../../state/use-view.ts';
import { ReadingList } from '../../typed-line/reading-list.tsx';
import { useReading, useTypedLarder } from '../../typed-line/use-reading.ts';
import { logEdits } from './log-edits.ts';
import { MealChoice } from './meal-choice.tsx';
import { StandingLog } from './standing-log.tsx';

interface LineDraft {
  line: string;
  /** The meal it goes to, when it was chosen. */
  chosen: number | null;
}

const BLANK: LineDraft = { line: '', chosen: null };

const useDraft = keptDraft<LineDraft>(({ line }) => line !== '');

/** What stays in the line: what could not be read of what was sent, and what was typed meanwhile. */
function leftOf(now: string, sent: string, rest: string): string {
  if (!now.startsWith(sent)) return now;
  const since = now.slice(sent.length);
  return rest === '' ? since.replace(/^[\s,+]+/, '') : rest + since;
}

/** The typed line of the day: Enter logs what could be read, and leaves the rest in the line. */
export function LogLine({ day }: { day: DayView }) {
  const { athlete, date } = day;
  const id = useId();
  const foods = useLoaded(`larder ${athlete}`, () => readView('larder', athlete)).value;
  const habits = useLoaded(`habits ${athlete} ${date}`, () => readView('habits', athlete, date)).value;
  // Without habits the line may mean something else, so it is read once both are there.
  const larder = habits && foods;
  const { draft, change, ids } = useDraft(`${athlete} ${date}`, () => BLANK);
  const dayBefore = addDays(date, -1);
  // What is typed when the date changes stays with the date that it was typed on, out of sight.
  const behind = useDraft(`${athlete} ${dayBefore}`, () => BLANK).draft.line;
  const { line, chosen } = draft;
  // What stands in the line when the answer comes: typing goes on while it is sent.
  const latest = useRef(line);
  latest.current = line;
  const setLine = (next: string) => change({ line: next });
  const meal = chosen ?? day.nextMeal;
  const typedLarder = useTypedLarder(larder, { habits: habits?.meals[meal - 1] });
  const items = useReading(line, typedLarder);
  const { tell } = useNotice();
  const { busy, problem, run, withIds } = useSubmit({ ids });

  const log = async () => {
    const logged = readyItems(items);
    if (logged.length === 0) return;
    const { edits, back } = logEdits(logged, day, meal, withIds);
    const rest = lineLeft(items);
    // Stored unheard, it makes the next meal due; sent again, it goes to the same one.
    change({ chosen: meal });
    if (!(await run(() => sendEdits(edits)))) return;
    change({ line: leftOf(latest.current, line, rest), chosen });
    tell(`Logged ${logged.map(({ food }) => food.name).join(', ')} to meal ${meal}.`, back);
  };

  return (
    <Form class="log-line" save={log}>
      <div class="log-row">
        <div class="field">
          <label for={id}>Typed line</label>
          <input
            id={id}
            class="input"
            value={line}
            placeholder="200 chicken, 2 eggs + 6 whites, 80g oats"
            autocomplete="off"
            spellcheck={false}
            onInput={(event) => setLine(event.currentTarget.value)}
            onPaste={pasteLines}
          />
        </div>
        <MealChoice meal={meal} day={day} onMeal={(to) => change({ chosen: to })} />
        <button type="submit" class="button first" disabled={busy || readyItems(items).length === 0}>
          Log
        </button>
      </div>
      {items.length > 0 && larder && (
        <ReadingList
          items={items}
          energyUnit={day.units.energy}
          choose={(item, food) => setLine(replaceItem(line, item.end, food, typedLarder).line)}
        />
      )}
      {line === '' && day.meals.every(({ entries }) => entries.length === 0) && (
        <p class="hint">
          Type what you ate with commas between, and press Enter: it fills the beams. The extension does the
          same from any tab once it is paired, under Devices.
        </p>
      )}
      {line === '' && behind !== '' && (
        <p class="hint">
          “{behind}” is still in the line of <a href={hrefOf('today', dayBefore)}>the day before</a>.
        </p>
      )}
      {problem && <ProblemNote problem={problem} />}
      {line === '' && larder && larder.standingMeals.length > 0 && (
        <StandingLog larder={larder} day={day} meal={meal} />
      )}
    </Form>
  );
}
