import { useKeepPlace } from './keep-place.ts';
import { Writing } from './writing.tsx';

interface RowActionProps {
  /** What the row shows: `Edit`. */
  name: string;
  /** To what it is done, for those who hear the button alone. */
  what: string;
  run: () => void;
}

/** Something to do with one row of many. */
export function RowAction({ name, what, run }: RowActionProps) {
  const button = useKeepPlace<HTMLButtonElement>(`button[aria-label^="${name} "]`);
  return (
    <Writing>
      <button ref={button} type="button" class="link small" aria-label={`${name} ${what}`} onClick={run}>
        {name}
      </button>
    </Writing>
  );
}
