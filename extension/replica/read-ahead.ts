import type { PullResponse } from '@platewright/core/protocol/sync.ts';
import { beyond, type Head } from './rows.ts';
import type { Daemon } from './sync.ts';

type From = Pick<Head, 'seq' | 'mark' | 'reached'>;

/**
 * Asks for the next page of the log while the one before is written, for one sync. To the sync it is an answer that was
 * long on its way: it is taken only when it is asked for from the very place, and the daemon's time in it goes on.
 */
export function readAhead(daemon: Daemon, now: () => number): Daemon {
  let ahead: { request: string; answer: ReturnType<typeof ask> } | null = null;
  const ask = async (from: From, limit: number) => {
    const answer = await daemon.pull(from, limit);
    return { answer, cameAt: now() };
  };
  return {
    ...daemon,
    async pull(from, limit) {
      const request = textOf(from, limit);
      const { answer, cameAt } = await (ahead?.request === request ? ahead.answer : ask(from, limit));
      ahead = null;
      if (!answer.ok) return answer;
      const next = nextPlace(from, answer.value);
      if (next !== null) ahead = { request: textOf(next, limit), answer: ask(next, limit) };
      return { ...answer, value: { ...answer.value, now: answer.value.now + now() - cameAt } };
    },
  };
}

/** Where a sync goes on once it has taken in a page; null after the last one. */
function nextPlace({ reached }: From, page: PullResponse): From | null {
  if ('reset' in page || !page.more) return null;
  return { seq: page.seq, mark: page.mark, reached: beyond(reached, page.seq) };
}

function textOf({ seq, mark, reached }: From, limit: number): string {
  return JSON.stringify([seq, mark, reached?.seq, reached?.mark, limit]);
}
