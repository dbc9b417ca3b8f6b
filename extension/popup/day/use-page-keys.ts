import { useEffect, useRef } from 'preact/hooks';

export interface PageKeys {
  stepMeal: (step: 1 | -1) => void;
  stepDate: (step: 1 | -1) => void;
  standingMeal: (digit: number) => void;
  undo: () => void;
  help: () => void;
  /** Closes what is open over the day. */
  close: () => void;
}

/**
 * Keys that work wherever the focus is. In a field that holds text, undo and `?` are the field's own. A key of which
 * nothing is given is the browser's.
 */
export function usePageKeys(given: Partial<PageKeys>): void {
  // Taken at each render, not after the paint: keys may come faster than that.
  const latest = useRef(given);
  latest.current = given;
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      const press = event.defaultPrevented ? undefined : pressOf(event, latest.current);
      if (press === undefined) return;
      press();
      event.preventDefault();
    };
    document.addEventListener('keydown', onKeyDown);
    return () => document.removeEventListener('keydown', onKeyDown);
  }, []);
}

/** What a key does; undefined when that is the browser's or the field's to say. */
function pressOf(event: KeyboardEvent, keys: Partial<PageKeys>): (() => void) | undefined {
  const { key, code, altKey, ctrlKey, metaKey } = event;
  const digit = /^Digit([1-9])$/.exec(code)?.[1];
  if (key === 'PageUp' || key === 'PageDown') {
    const go = altKey ? keys.stepDate : keys.stepMeal;
    return go && (() => go(key === 'PageUp' ? -1 : 1));
  }
  if (altKey && digit !== undefined) {
    const { standingMeal } = keys;
    // Held, it logs once.
    return standingMeal && (() => (event.repeat ? undefined : standingMeal(Number(digit))));
  }
  if (key === 'Escape') return keys.close;
  if (holdsText(event.target)) return undefined;
  if ((ctrlKey || metaKey) && key.toLowerCase() === 'z') return keys.undo;
  return key === '?' ? keys.help : undefined;
}

function holdsText(target: EventTarget | null): boolean {
  return target instanceof HTMLInputElement && target.value !== '';
}
