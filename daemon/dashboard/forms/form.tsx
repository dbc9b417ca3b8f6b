import type { ComponentChildren, FormHTMLAttributes } from 'preact';
import { useLayoutEffect } from 'preact/hooks';
import { useKeepPlace } from '../shell/keep-place.ts';
import { useMayWrite } from '../state/athlete.tsx';

interface FormProps extends Omit<FormHTMLAttributes, 'onSubmit'> {
  save: () => void;
  /** It came by a press, maybe out of sight: its first field takes the focus, and is typed over. */
  opened?: boolean;
  children: ComponentChildren;
}

/** A form that this page sends, not the browser; a device that may only look has none. */
export function Form({ save, opened = false, children, ...rest }: FormProps) {
  const form = useKeepPlace<HTMLFormElement>();
  useLayoutEffect(() => {
    const first = form.current?.querySelector<HTMLElement>('input:not([type="radio"]), :checked, select');
    if (!opened || !first) return;
    first.focus();
    if (first instanceof HTMLInputElement) first.select();
  }, []);
  if (!useMayWrite()) return null;
  return (
    <form
      {...rest}
      ref={form}
      onSubmit={(event) => {
        event.preventDefault();
        save();
      }}
    >
      {children}
    </form>
  );
}
