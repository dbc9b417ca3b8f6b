import { useState } from 'preact/hooks';
import type { UnheardIds } from './new-ids.ts';

interface KeptDraft<D> {
  draft: D;
  change: (part: Partial<D>) => void;
  /** Keeps it no longer: it was sent, or left. */
  forget: () => void;
  /** Under which it may have been stored unheard. */
  ids: UnheardIds;
}

/**
 * A form's draft that outlives its page: what was typed and not sent is there again when the page is opened anew, as long
 * as the tab lives, with the ids under which it may have been stored unheard. `begun` says whether there is something
 * worth keeping.
 */
export function keptDraft<D extends object>(begun: (draft: D) => boolean = () => true) {
  const kept = new Map<string, D>();
  const sent = new Map<string, UnheardIds>();

  /**
   * The draft kept under a key, which is read once, or else a blank one. The key holds the unit of its bare numbers, as what was
   * typed in another one would be read as this one, and the record that is changed: saved over what another device made of it
   * meanwhile, the draft would undo that.
   */
  return function useDraft(key: string, blank: () => D): KeptDraft<D> {
    const [place] = useState(key);
    const [draft, setDraft] = useState(() => kept.get(place) ?? blank());
    const ids = sent.get(place) ?? new Map();
    sent.set(place, ids);
    const forget = () => {
      kept.delete(place);
      ids.clear();
    };
    const change = (part: Partial<D>) => {
      setDraft((before) => ({ ...before, ...part }));
      // Not in the updater: a form that has gone while it was sent is not drawn any more.
      const next = { ...(kept.get(place) ?? draft), ...part };
      if (begun(next)) kept.set(place, next);
      else forget();
    };
    return { draft, change, forget, ids };
  };
}
