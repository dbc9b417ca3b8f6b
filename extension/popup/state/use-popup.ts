import { useLayoutEffect, useState } from 'preact/hooks';
import { onReplicaChange, reader } from '../../platform/replica.ts';
import { type PopupState, readPopup } from './read-popup.ts';

type Shown = PopupState | { kind: 'unreadable'; reason: string };

/** What the popup shows of a date, read anew whenever the replica changes; null until it is first read. */
export function usePopup(date: string | null): Shown | null {
  const [state, setState] = useState<Shown | null>(null);
  // Not after the first paint, but while the browser prepares it.
  useLayoutEffect(() => {
    let latest = 0;
    const read = async () => {
      latest += 1;
      const turn = latest;
      const next = await readPopup(reader, date, Date.now()).catch(
        (error): Shown => ({ kind: 'unreadable', reason: String(error) }),
      );
      if (turn === latest) setState(next);
    };
    void read();
    const stop = onReplicaChange(() => void read());
    return () => {
      latest = -1;
      stop();
    };
  }, [date]);
  return state;
}
