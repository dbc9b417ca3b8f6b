import type { ComponentChildren, FormHTMLAttributes } from 'preact';

interface FormProps extends Omit<FormHTMLAttributes, 'onSubmit'> {
  save: () => void;
  children: ComponentChildren;
}

/** A form that this page sends, not the browser. */
export function Form({ save, children, ...rest }: FormProps) {
  return (
    <form
      {...rest}
      onSubmit={(event) => {
        event.preventDefault();
        save();
      }}
    >
      {children}
    </form>
  );
}
