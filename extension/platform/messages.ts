import type { Json } from '@platewright/core/changes/change.ts';
import { browser } from 'wxt/browser';
import type { Edit } from '../replica/edit.ts';

/** What pages ask of the worker. */
export interface Requests {
  /** Keeps edits; the answer comes once they are on disk. */
  edit: { ask: readonly Edit[]; answer: EditEnd };
  /** What becomes of a change that the daemon refused. */
  decide: { ask: Decision; answer: EditEnd };
  sync: { ask: null; answer: null };
  pair: { ask: { address: string; code: string }; answer: PairEnd };
  /** Answers `choose`: send this browser's records to the other store, or start from what that store holds. */
  join: { ask: 'send' | 'replace'; answer: null };
  unpair: { ask: null; answer: null };
  /** Logs for this athlete from now on. */
  choose: { ask: string; answer: null };
  erase: { ask: null; answer: null };
}

/** Kept, with the edits that take it back; or not, with the reason. */
export type EditEnd = { ok: true; undo: Edit[] } | { ok: false; reason: string };

export type Decision =
  | { order: number; how: 'resend' | 'let-go' }
  | { order: number; how: 'amend'; fields: Record<string, Json> };

/**
 * How pairing ended. `choose`: the store is another one than the one whose records are here, so the person decides what
 * becomes of them.
 */
export type PairEnd = { state: 'paired' | 'choose' } | { state: 'failed'; detail: string };

type Name = keyof Requests;
type Handlers = { [N in Name]: (ask: Requests[N]['ask']) => Promise<Requests[N]['answer']> };

/** Asks the worker, which the browser starts when it is not there. */
export async function askWorker<N extends Name>(
  name: N,
  ask: Requests[N]['ask'],
): Promise<Requests[N]['answer']> {
  return await browser.runtime.sendMessage({ name, ask });
}

/** Lets the worker answer. Messages come from this extension's own pages only. */
export function answerPages(handlers: Handlers): void {
  browser.runtime.onMessage.addListener((message, sender, respond) => {
    if (sender.id !== browser.runtime.id || !isRequest(message, handlers)) return false;
    void dispatch(handlers, message).then(respond);
    // Keeps the line open until the answer is there.
    return true;
  });
}

type AnyRequest = { [N in Name]: { name: N; ask: Requests[N]['ask'] } }[Name];

function isRequest(message: unknown, handlers: Handlers): message is AnyRequest {
  return (
    typeof message === 'object' &&
    message !== null &&
    'name' in message &&
    typeof message.name === 'string' &&
    Object.hasOwn(handlers, message.name)
  );
}

async function dispatch<N extends Name>(
  handlers: Handlers,
  { name, ask }: { name: N; ask: Requests[N]['ask'] },
): Promise<Requests[N]['answer']> {
  return await handlers[name](ask);
}
