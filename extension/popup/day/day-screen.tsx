import { type ReadyItem, readyItems } from '@platewright/core/foods/typed-line/read-line.ts';
import { loggedWords } from '@platewright/core/ui/logged-words.ts';
import { useMemo, useRef, useState } from 'preact/hooks';
import { source } from '../../platform/source.ts';
import type { LarderFood } from '../../replica/larder.ts';
import { Draft } from '../line/draft.tsx';
import { OptionList } from '../line/option-list.tsx';
import { layTable, type Option } from '../line/options.ts';
import { TypedLine } from '../line/typed-line.tsx';
import { useTypedLine } from '../line/use-typed-line.ts';
import { readFoods } from '../state/read-foods.ts';
import type { DayState } from '../state/read-popup.ts';
import { foodsWords } from '../state/saved-meal.ts';
import { useActions } from '../state/use-actions.ts';
import { useHabits } from '../state/use-habits.ts';
import { DateHead, stepFrom } from './date-head.tsx';
import { DayBeams } from './day-beams.tsx';
import { Eaten } from './eaten.tsx';
import { amountsOf, type FoodAmount, logEdits } from './entry-edits.ts';
import { FirstLine } from './first-line.tsx';
import { Foot } from './foot.tsx';
import { Help } from './help.tsx';
import { MealHead } from './meal-head.tsx';
import { NoticeLine } from './notice-line.tsx';
import { usePageKeys } from './use-page-keys.ts';

interface DayScreenProps {
  /** Null until the replica is read; the typed line takes keys all the same. */
  state: DayState | null;
  show: (date: string | null) => void;
}

/** A date to log on: beams, the meal to log to, the typed line, and what was eaten. */
export function DayScreen({ state, show }: DayScreenProps) {
  const [chosen, setChosen] = useState<{ date: string; meal: number } | null>(null);
  const [help, setHelp] = useState(false);
  const below = useRef<HTMLDivElement>(null);
  const actions = useActions(state?.saved ?? null);
  const day = state?.day ?? null;
  const date = day?.date ?? '';
  const meal = (chosen?.date === date ? chosen.meal : day?.nextMeal) ?? 1;
  const habits = useHabits(state?.athlete ?? null, date);
  const table = useMemo(
    () => (habits === null || state === null ? null : layTable(habits, state, meal)),
    [habits, state, meal],
  );

  const log = async (amounts: readonly FoodAmount[], what: string): Promise<boolean> => {
    if (day === null) return true;
    // The meal stays, though logging may make the next one due: the person is not done with it.
    setChosen({ date, meal });
    const foods = await readFoods(
      day.athlete,
      amounts.map(({ food }) => food),
    );
    const edits = logEdits(foods, source, { athlete: day.athlete, date, meal }, amounts);
    if (edits.length === 0) {
      actions.say(`${what} is no longer in the larder.`);
      return true;
    }
    const refused = await actions.act(edits, loggedWords(what, meal, amounts.length - edits.length));
    // The meal at hand comes first.
    below.current?.scrollTo({ top: 0 });
    return refused;
  };
  const logItems = (items: readonly ReadyItem<LarderFood>[]) =>
    log(
      items.map(({ food, grams, amount }) => ({ food: food.id, grams, amount })),
      foodsWords(items.map(({ food }) => food)),
    );
  const logStanding = (digit: number) => {
    const standing = table?.standingMeals[digit - 1];
    if (standing !== undefined) void log(amountsOf(standing), standing.name);
  };
  const line = useTypedLine(table, { log: logItems, failed: actions.hush });
  const ready = readyItems(line.items);
  // One of the two: what the line points at must be on the screen.
  const helping = help && line.options.length === 0;
  const showHelp = (to: boolean) => {
    setHelp(to);
    line.setClosed(to);
  };
  const choose = (option: Option) => {
    if (option.kind !== 'standing') line.take(option);
    else {
      line.clear();
      logStanding(option.digit);
    }
  };
  const toMeal = (to: number) => {
    if (day !== null && to >= 1 && to <= day.meals.length) setChosen({ date, meal: to });
  };

  usePageKeys({
    stepMeal: (step) => toMeal(meal + step),
    stepDate: (step) => {
      if (state !== null) show(stepFrom(state, step));
    },
    standingMeal: logStanding,
    undo: () => void actions.undo(),
    help: () => showHelp(!helping),
    ...(helping && { close: () => showHelp(false) }),
  });

  return (
    <>
      <DateHead state={state} show={show} />
      <main class="day">
        {!helping && <DayBeams day={day} />}
        <MealHead day={day} meal={meal} choose={toMeal} />
        <TypedLine line={line} label={`Log to meal ${meal}`} choose={choose} />
        {day !== null && ready.length > 0 && (
          <Draft athlete={day.athlete} items={ready} energyUnit={day.units.energy} />
        )}
        <div class="below" ref={below}>
          {helping ? (
            <Help close={() => showHelp(false)} />
          ) : (
            <>
              <OptionList options={line.options} active={line.active} choose={choose} />
              {day !== null && <Eaten day={day} meal={meal} actions={actions} />}
              {day !== null && line.text === '' && line.options.length === 0 && <FirstLine day={day} />}
            </>
          )}
        </div>
      </main>
      {state !== null && (
        <Foot state={state}>
          <NoticeLine notice={actions.notice} undo={() => void actions.undo()} />
        </Foot>
      )}
    </>
  );
}
