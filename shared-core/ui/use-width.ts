import type { RefObject } from 'preact';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';

/** The width of an element in CSS pixels, kept up to date; `fallback` until it is known. */
export function useWidth(fallback: number): [RefObject<HTMLDivElement | null>, number] {
  const element = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(fallback);
  useLayoutEffect(() => {
    const watched = element.current;
    if (!watched) return;
    const observer = new ResizeObserver(() => setWidth(Math.max(200, Math.round(watched.clientWidth))));
    observer.observe(watched);
    return () => observer.disconnect();
  }, []);
  return [element, width];
}
