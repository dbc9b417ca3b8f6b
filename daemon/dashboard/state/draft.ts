import { useState } from 'preact/hooks';

/**
 * A form's draft that outlives its page: what was typed and not sent is there again when the page is opened anew, as long
 * as the tab lives. `begun` says whether there is something worth keeping.
 */
export function keptDraft<D extends object>(blank: () => D, begun: (draft: D) => boolean) {
  const kept = new Map<string, D>();

  /** The draft kept under a key, which is read once, and what changes it. */
  return function useDraft(key: string): [draft: D, change: (part: Partial<D>) => void] {
    const [place] = useState(key);
    const [draft, setDraft] = useState(() => kept.get(place) ?? blank());
    const change = (part: Partial<D>) => {
      setDraft((before) => ({ ...before, ...part }));
      // Not in the updater: a form that has gone while it was sent is not drawn any more.
      const next = { ...(kept.get(place) ?? draft), ...part };
      if (begun(next)) kept.set(place, next);
      else kept.delete(place);
    };
    return [draft, change];
  };
}
