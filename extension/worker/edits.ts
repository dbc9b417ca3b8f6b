import type { Decision, EditEnd } from '../platform/messages.ts';
import { source } from '../platform/source.ts';
import { type Edit, edit } from '../replica/edit.ts';
import { amend, letGo, resend } from '../replica/outbox.ts';
import { replica, wholeReplica } from './replica.ts';
import { requestSync } from './run-sync.ts';

/** Keeps edits of a page and sends them on. */
export function keepEdits(edits: readonly Edit[]): Promise<EditEnd> {
  return ended(() => edit(replica, source, edits));
}

/** Does what the person decided about a refused change. */
export function decide(decision: Decision): Promise<EditEnd> {
  return ended(async () => {
    const { order } = decision;
    if (decision.how === 'amend') await amend(replica, source, order, decision.fields);
    else await (decision.how === 'resend' ? resend : letGo)(replica, order);
    return [];
  });
}

async function ended(work: () => Promise<Edit[]>): Promise<EditEnd> {
  try {
    await wholeReplica();
    const undo = await work();
    void requestSync();
    return { ok: true, undo };
  } catch (error) {
    return { ok: false, reason: error instanceof Error ? error.message : String(error) };
  }
}
