import type { Change } from '@platewright/core/changes/change.ts';
import type { Outcome } from '@platewright/core/protocol/sync.ts';
import type { Answer, Daemon } from '../../extension/replica/sync.ts';
import type { Dice } from './dice.ts';

/** Values that a simulated daemon never takes, as an older one would refuse what it does not understand. */
export const UNFIT = 'unfit';
/** One alone is too much for it. */
export const VAST = 'vast';
/** Changes of one push that are not too much. */
const MOST_PUSHED = 4;
const MOST_PULLED = 5;
const MOST_RECORDS = 3;

const LOST = { ok: false, why: 'offline', detail: 'No answer.' } as const;
const CUT = { ok: false, why: 'refused', detail: 'The answer can’t be read.' } as const;
const TOO_MUCH = { ok: false, why: 'too-much', detail: 'That is too much at once.' } as const;

/** What happens around a request. */
export interface Around {
  /** Before it leaves and after its answer is there: what else goes on meanwhile; throws where the program is killed. */
  meanwhile(): Promise<void>;
  /** Comes to the daemon some time after. */
  late(request: () => Promise<unknown>): void;
  /** What the daemon made of changes, whether or not the answer arrives. */
  told(changes: readonly Change[], outcomes: readonly Outcome[]): void;
}

/** A daemon behind a network that loses, doubles, delays, reorders and cuts messages while `dice` is not null. */
export function throughNetwork(daemon: Daemon, around: Around, dice: () => Dice | null): Daemon {
  const carry = async <T>(request: () => Promise<Answer<T>>): Promise<Answer<T>> => {
    const luck = dice()?.uniform() ?? 1;
    await around.meanwhile();
    if (luck < 0.06) return LOST;
    if (luck < 0.12) around.late(request);
    if (luck < 0.09) return LOST;
    const answer = await request();
    if (luck > 0.12 && luck < 0.18) await request();
    await around.meanwhile();
    if (luck > 0.18 && luck < 0.24) return LOST;
    return luck > 0.24 && luck < 0.28 ? CUT : answer;
  };
  return {
    push: (changes) => carry(() => push(daemon, changes, around)),
    // Small pages, so that a sync has many places to be stopped at.
    pull: (from, limit) => carry(() => daemon.pull(from, Math.min(limit, MOST_PULLED))),
    snapshot: (from, limit) => carry(() => daemon.snapshot(from, Math.min(limit, MOST_RECORDS))),
  };
}

async function push(daemon: Daemon, changes: readonly Change[], around: Around): ReturnType<Daemon['push']> {
  const has = ({ fields }: Change, value: string) => JSON.stringify(fields).includes(value);
  if (changes.length > MOST_PUSHED || changes.some((change) => has(change, VAST))) return TOO_MUCH;
  const fit = changes.filter((change) => !has(change, UNFIT));
  const answer = await daemon.push(fit);
  if (!answer.ok) return answer;
  around.told(fit, answer.value.outcomes);
  const refusals = changes
    .filter((change) => !fit.includes(change))
    .map(({ id }) => ({ id, outcome: 'rejected', reason: 'Unfit.' }) as const);
  return { ok: true, value: { ...answer.value, outcomes: [...answer.value.outcomes, ...refusals] } };
}
