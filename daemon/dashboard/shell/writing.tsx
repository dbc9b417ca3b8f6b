import type { ComponentChildren } from 'preact';
import { useMayWrite } from '../state/athlete.tsx';

/** What only a device that may write has a use for; on one that may look, nothing. */
export function Writing({ children }: { children: ComponentChildren }) {
  return useMayWrite() ? children : null;
}
