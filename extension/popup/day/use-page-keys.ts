import { useEffect, useRef } from 'preact/hooks';

export interface PageKeys {
  stepMeal(step: 1 | -1): void;
  stepDate(step: 1 | -1): void;
  standingMeal(digit: number): void;
  undo(): void;
  help(): void;
}

/** Keys that work wherever the focus is. In a field that holds text, undo and `?` are the field's own. */
export function usePageKeys(given: PageKeys): void {
  // Taken at each render, not after the paint: keys may come faster than that.
  const latest = useRef(given);
  latest.current = given;
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      const { current: keys } = latest;
      const { key, code, altKey, ctrlKey, metaKey } = event;
      const step = key === 'PageUp' ? -1 : 1;
      const digit = /^Digit([1-9])$/.exec(code)?.[1];
      if (key === 'PageUp' || key === 'PageDown') {
        if (altKey) keys.stepDate(step);
        else keys.stepMeal(step);
      } else if (altKey && digit !== undefined) keys.standingMeal(Number(digit));
      else if ((ctrlKey || metaKey) && key.toLowerCase() === 'z' && !holdsText(event.target)) keys.undo();
      else if (key === '?' && !holdsText(event.target)) keys.help();
      else return;
      event.preventDefault();
    };
    document.addEventListener('keydown', onKeyDown);
    return () => document.removeEventListener('keydown', onKeyDown);
  }, []);
}

function holdsText(target: EventTarget | null): boolean {
  return target instanceof HTMLInputElement && target.value !== '';
}
