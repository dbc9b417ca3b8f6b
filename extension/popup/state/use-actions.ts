import { useRef, useState } from 'preact/hooks';
import { askWorker, type EditEnd } from '../../platform/messages.ts';
import type { Edit } from '../../replica/edit.ts';
import type { Done } from './saved-meal.ts';

/** What was last done, in words, and whether it can be undone. */
export interface Notice {
  text: string;
  undoable: boolean;
}

/** A message to a worker that is stopped just then is sometimes never answered. */
const PATIENCE_MS = 5000;
const UNHEARD =
  'The browser stopped the extension’s worker, and whether this was saved is not known. Look at the day before you try again.';

export interface Actions {
  notice: Notice | null;
  /** Keeps edits; says so once they are on disk. Resolves to whether they are known not to be kept. */
  act(edits: readonly Edit[], done: string): Promise<boolean>;
  /** Takes back the last thing done here, then the meal saved before. */
  undo(): Promise<void>;
  say(text: string): void;
  /** Says no longer what was done last; it can still be taken back. */
  hush(): void;
}

/** `saved` is what was done last before this popup was opened, where it can still be taken back. */
export function useActions(saved: Done | null): Actions {
  // Undefined until something is done here.
  const [notice, setNotice] = useState<Notice | null>();
  const done = useRef<Done[]>([]);

  async function keep(edits: readonly Edit[]): Promise<Edit[] | 'unheard' | 'refused'> {
    const heard = await hear(edits);
    // Unknown is not failed: the same edits name the same records, so they can be kept twice, and are then one.
    const end = heard ?? (await hear(edits));
    // What is there since the first time can't be told from what was there before.
    if (end?.ok === true) return heard === null ? [] : end.undo;
    setNotice({ text: end === null ? UNHEARD : `Not saved. ${end.reason}`, undoable: false });
    return end === null ? 'unheard' : 'refused';
  }

  return {
    notice: notice === undefined ? saved && { text: saved.text, undoable: true } : notice,
    async act(edits, text) {
      const undo = await keep(edits);
      if (typeof undo === 'string') return undo === 'refused';
      if (undo.length > 0) done.current.push({ undo, text });
      setNotice({ text, undoable: undo.length > 0 });
      return false;
    },
    async undo() {
      const own = done.current.pop();
      const last = own ?? saved;
      if (last === null) {
        setNotice({ text: 'Nothing to undo.', undoable: false });
      } else if (typeof (await keep(last.undo)) !== 'string') {
        setNotice({ text: `Undone: ${last.text}`, undoable: done.current.length > 0 });
      } else if (own !== undefined) {
        // It can be tried again.
        done.current.push(own);
      }
    },
    say: (text) => setNotice({ text, undoable: false }),
    hush: () => setNotice(null),
  };
}

/** The worker's answer; null when there is none, because the browser stopped it. */
function hear(edits: readonly Edit[]): Promise<EditEnd | null> {
  const late = new Promise<null>((resolve) => setTimeout(resolve, PATIENCE_MS, null));
  return Promise.race([askWorker('edit', edits).catch(() => null), late]);
}
