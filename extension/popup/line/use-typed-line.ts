import { replaceItem } from '@platewright/core/foods/typed-line/complete.ts';
import {
  lineLeft,
  type ReadyItem,
  readLine,
  readyItems,
} from '@platewright/core/foods/typed-line/read-line.ts';
import { useEffect, useState } from 'preact/hooks';
import type { LarderFood } from '../../replica/larder.ts';
import { type Option, optionsAt, type Table } from './options.ts';
import { faultyItems, withSuggestion } from './read-line.ts';

interface LineState {
  text: string;
  caret: number;
  /** Place of the option that is pointed at; -1 for none. */
  active: number;
  /** The list was closed with Escape, until the next key. */
  closed: boolean;
  /** Enter was pressed: whatever can't be read is marked, wherever the caret is. */
  sent: boolean;
  /** Enter was pressed before the larder was read: it counts as soon as it is. */
  hurried: boolean;
}

const BLANK: LineState = { text: '', caret: 0, active: -1, closed: false, sent: false, hurried: false };

interface Sending {
  /** Resolves to whether the line must be there to be sent again, because nothing of it was kept. */
  log: (items: readonly ReadyItem<LarderFood>[]) => Promise<boolean>;
  /** Enter was pressed on a line of which nothing can be logged. */
  failed: () => void;
}

/** The typed line and its list, as the WAI-ARIA combobox pattern has them: focus stays in the line, the list is pointed at. */
export function useTypedLine(table: Table | null, { log, failed }: Sending) {
  const [state, setState] = useState(BLANK);
  const { text, caret, active, closed, sent, hurried } = state;
  const read = (line: string) => (table === null ? [] : readLine(line, table.larder));
  const items = read(text);
  const inLine = new Set(readyItems(items).map(({ food }) => food.id));
  const options = table === null || closed ? [] : optionsAt(text, caret, table, inLine);
  const update = (change: Partial<LineState>) => setState((before) => ({ ...before, ...change }));

  async function send(line: string) {
    if (table === null) {
      update({ hurried: true });
      return;
    }
    const all = read(line);
    const left = lineLeft(all);
    // To the first item that is left, so that the list offers what it may mean.
    const first = read(left)[0]?.end ?? left.length;
    setState({ ...BLANK, text: left, caret: first, sent: true });
    const ready = readyItems(all);
    if (ready.length === 0) {
      if (left !== '') failed();
    } else if (await log(ready)) {
      // Nothing typed is lost, and neither is what was typed meanwhile.
      setState((now) => {
        const typed = [...ready.map((item) => item.text), now.text.trim()].filter(Boolean).join(', ');
        const back = now.text === left ? line : typed;
        return { ...BLANK, text: back, caret: back.length };
      });
    }
  }

  useEffect(() => {
    if (table !== null && hurried) void send(text);
  }, [table]);

  return {
    text,
    caret,
    items,
    options,
    active: active < options.length ? active : -1,
    faults: faultyItems(items, sent ? null : caret),

    type(next: string, at: number) {
      setState({ ...BLANK, text: next, caret: at });
    },

    moveCaret(at: number) {
      if (at !== caret) update({ caret: at, active: -1 });
    },

    /** Points at the next or previous option, round and round; opens the list when it was closed. */
    point(step: 1 | -1) {
      const stops = options.length + 1;
      if (closed) update({ closed: false });
      else update({ active: ((active + 1 + step + stops) % stops) - 1 });
    },

    clear() {
      setState(BLANK);
    },

    /** Closes the list until the next key, or opens it again. */
    setClosed(to: boolean) {
      update({ closed: to, active: -1 });
    },

    /** Closes the list, then clears the line. False when there was nothing to do. */
    escape(): boolean {
      if (options.length > 0 && (text !== '' || active >= 0)) update({ closed: true, active: -1 });
      else if (text !== '') setState(BLANK);
      else return false;
      return true;
    },

    /**
     * Puts an option into the line. When it answers the last question that was left after Enter, the line is logged.
     * Standing meals are logged, not typed: see `DayScreen`.
     */
    take(option: Exclude<Option, { kind: 'standing' }>) {
      if (table === null) return;
      const { larder } = table;
      const next =
        option.kind === 'food'
          ? replaceItem(text, caret, option.food, larder)
          : lineWithCaretAtEnd(withSuggestion(text, { ...option.suggestion, food: option.food }, larder));
      if (sent && read(next.line).every((item) => item.status === 'ok')) void send(next.line);
      else setState({ ...BLANK, text: next.line, caret: next.caret });
    },

    /** Logs what can be read, and keeps the rest in the line. */
    send: () => send(text),
  };
}

function lineWithCaretAtEnd(line: string): { line: string; caret: number } {
  return { line, caret: line.length };
}
