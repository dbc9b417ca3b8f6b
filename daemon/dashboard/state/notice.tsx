import type { Edit } from '@platewright/core/protocol/records.ts';
import { type ComponentChildren, createContext } from 'preact';
import { useContext, useEffect, useMemo, useState } from 'preact/hooks';
import { sendEdits } from '../api/edits.ts';
import { problemOf } from '../api/request.ts';

/** What was just done, with the way back; or what failed, with the way to try again. */
interface Notice {
  text: string;
  wrong: boolean;
  action: { label: string; run: () => void } | null;
}

interface NoticeState {
  notice: Notice | null;
  dismiss: () => void;
  /** Says what was done; `back` are the edits that undo it. */
  tell: (done: string, back?: readonly Edit[]) => void;
  /** Sends edits and says so; `back` are the edits that undo them. */
  act: (edits: readonly Edit[], done: string, back?: readonly Edit[]) => Promise<void>;
}

const NoticeContext = createContext<NoticeState | null>(null);

export function NoticeProvider({ children }: { children: ComponentChildren }) {
  const [notice, setNotice] = useState<Notice | null>(null);
  // It lies over the foot of the page, so it goes once the next thing is typed or chosen; a failure waits for an answer.
  useEffect(() => {
    if (notice === null || notice.wrong) return;
    const goes = () => setNotice(null);
    document.addEventListener('input', goes);
    return () => document.removeEventListener('input', goes);
  }, [notice]);
  const deeds = useMemo(() => deedsWith(setNotice), []);
  const state = useMemo(() => ({ notice, dismiss: () => setNotice(null), ...deeds }), [notice, deeds]);
  return <NoticeContext.Provider value={state}>{children}</NoticeContext.Provider>;
}

function deedsWith(show: (notice: Notice) => void): Pick<NoticeState, 'tell' | 'act'> {
  const tell: NoticeState['tell'] = (done, back) => {
    const undo = back && { label: 'Undo', run: () => void act(back, 'Undone.') };
    show({ text: done, wrong: false, action: undo ?? null });
  };
  const act: NoticeState['act'] = async (edits, done, back) => {
    try {
      await sendEdits(edits);
      tell(done, back);
    } catch (error) {
      const { title, detail } = problemOf(error);
      const text = [title, detail].filter(Boolean).join(' ');
      show({ text, wrong: true, action: { label: 'Try again', run: () => void act(edits, done, back) } });
    }
  };
  return { tell, act };
}

/** The bar at the foot of the page, and the way to do something that can be undone. */
export function useNotice(): NoticeState {
  const state = useContext(NoticeContext);
  if (!state) throw new Error('a notice outside its provider');
  return state;
}
