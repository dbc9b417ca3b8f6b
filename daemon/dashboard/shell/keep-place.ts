import type { RefObject } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';

/**
 * Keeps the place of who works by keyboard: when what has the focus goes from the page, the focus goes to what stands
 * nearest. That is the same button of the same row or of one beside it, as `alike` finds it, then the heading of the
 * section, then the page.
 */
export function useKeepPlace<E extends HTMLElement>(alike = 'button'): RefObject<E | null> {
  const ref = useRef<E>(null);
  useLayoutEffect(() => {
    const gone = ref.current;
    if (!gone) return;
    // A button that is disabled while it sends drops the focus, and yet the place is there.
    let here = gone.contains(document.activeElement);
    const enter = () => {
      here = true;
    };
    const leave = ({ relatedTarget }: FocusEvent) => {
      here = relatedTarget === null || (relatedTarget instanceof Node && gone.contains(relatedTarget));
    };
    gone.addEventListener('focusin', enter);
    gone.addEventListener('focusout', leave);
    return () => {
      if (!here) return;
      const row = gone.closest('tr, li');
      const [before, after] = [row?.previousElementSibling, row?.nextElementSibling];
      // A form that opened in a list stands under the row it is about.
      const rows = gone.matches('form') ? [before, after] : [row, after, before];
      const heading = gone.closest('section')?.querySelector<HTMLElement>('h2');
      // Once all that goes has gone, and all that comes is there.
      queueMicrotask(() => {
        if (document.activeElement !== document.body && document.activeElement !== null) return;
        const buttons = rows.map((near) => near?.querySelector<HTMLElement>(alike));
        const place = [...buttons, heading, document.getElementById('main')].find(
          (near) => near?.isConnected,
        );
        if (place && !place.matches('button')) place.tabIndex = -1;
        place?.focus();
      });
    };
  }, []);
  return ref;
}
