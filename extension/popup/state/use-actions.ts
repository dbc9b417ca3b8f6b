import { useRef, useState } from 'preact/hooks';
import { askWorker, type EditEnd } from '../../platform/messages.ts';
import type { Edit } from '../../replica/edit.ts';

/** What was last done, in words, and whether it can be undone. */
export interface Notice {
  text: string;
  undoable: boolean;
}

export interface Actions {
  notice: Notice | null;
  /** Keeps edits; says so once they are on disk. */
  act(edits: readonly Edit[], done: string): Promise<void>;
  /** Takes back the last thing done here. */
  undo(): Promise<void>;
  say(text: string): void;
}

export function useActions(): Actions {
  const [notice, setNotice] = useState<Notice | null>(null);
  const done = useRef<{ undo: Edit[]; text: string }[]>([]);

  async function keep(edits: readonly Edit[]): Promise<Edit[] | null> {
    const end = await askWorker('edit', edits).catch(unheard);
    if (end.ok) return end.undo;
    setNotice({ text: `Not saved. ${end.reason}`, undoable: false });
    return null;
  }

  return {
    notice,
    async act(edits, text) {
      const undo = await keep(edits);
      if (undo === null) return;
      done.current.push({ undo, text });
      setNotice({ text, undoable: true });
    },
    async undo() {
      const last = done.current.pop();
      if (last === undefined) {
        setNotice({ text: 'Nothing to undo.', undoable: false });
      } else if ((await keep(last.undo)) !== null) {
        setNotice({ text: `Undone: ${last.text}`, undoable: done.current.length > 0 });
      }
    },
    say: (text) => setNotice({ text, undoable: false }),
  };
}

function unheard(): EditEnd {
  return { ok: false, reason: 'The browser stopped the extension’s worker. Try again.' };
}
