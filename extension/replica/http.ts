import { problemSchema } from '@platewright/core/protocol/records.ts';
import {
  type Place,
  pulledSchema,
  pushResponseSchema,
  snapshotResponseSchema,
} from '@platewright/core/protocol/sync.ts';
import { PROTOCOL, PROTOCOL_HEADER } from '@platewright/core/protocol/version.ts';
import type * as z from 'zod/mini';
import type { Answer, Daemon } from './sync.ts';

/** How to reach a daemon. `address` has no slash at its end. */
export interface Line {
  address: string;
  /** Null before pairing. */
  token: string | null;
  fetch: (url: string, init: RequestInit) => Promise<Response>;
}

/** A browser gives a worker's request 30 s; ours ends first, so that we are told and not killed. */
const PATIENCE_MS = 25_000;

/** The requests that sync makes. */
export function httpDaemon(line: Line): Daemon {
  return {
    push: (changes) => ask(line, 'push', pushResponseSchema, post({ changes })),
    pull: ({ seq, mark, reached }, limit) =>
      ask(line, `pull?since=${seq}&mark=${mark}&${known(reached)}limit=${limit}`, pulledSchema),
    snapshot: ({ snapshot, reached }, limit) => {
      const [athlete, record] = snapshot?.after ?? [];
      const from = snapshot === null ? '' : `afterAthlete=${athlete}&afterRecord=${record}&`;
      return ask(line, `snapshot?${from}${known(reached)}limit=${limit}`, snapshotResponseSchema);
    },
  };
}

function known(reached: Place | null): string {
  return reached === null ? '' : `reached=${reached.seq}&reachedMark=${reached.mark}&`;
}

export function post(body: object): RequestInit {
  return { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) };
}

/** Asks the daemon under `/v1` and checks what it says. Never throws: a failure is an answer with a sentence. */
export async function ask<T>(
  line: Line,
  path: string,
  schema: z.ZodMiniType<T>,
  init: RequestInit = {},
): Promise<Answer<T>> {
  const heard = await hear(line, path, init);
  if (heard === null) {
    return {
      ok: false,
      why: 'offline',
      detail: `No daemon answers at ${line.address}. Start it there, or check the address.`,
    };
  }
  const { response, body } = heard;
  if (!response.ok) return failure(response.status, body);
  const parsed = schema.safeParse(body);
  if (parsed.success) return { ok: true, value: parsed.data };
  const detail = 'The daemon’s answer can’t be read. Update daemon and extension to the same version.';
  return { ok: false, why: 'refused', detail };
}

/** An answer and what is in it, null where that is no JSON; null too when it did not come, or was cut on the way. */
async function hear(
  line: Line,
  path: string,
  init: RequestInit,
): Promise<{ response: Response; body: unknown } | null> {
  const response = await send(line, path, init);
  if (response === null) return null;
  try {
    return { response, body: await response.json() };
  } catch (error) {
    return error instanceof SyntaxError ? { response, body: null } : null;
  }
}

/** Sends a request; null when there is no connection. */
export async function send(line: Line, path: string, init: RequestInit): Promise<Response | null> {
  try {
    return await line.fetch(`${line.address}/v1/${path}`, {
      signal: AbortSignal.timeout(PATIENCE_MS),
      ...init,
      headers: {
        [PROTOCOL_HEADER]: String(PROTOCOL),
        ...(line.token !== null && { authorization: `Bearer ${line.token}` }),
        ...init.headers,
      },
    });
  } catch {
    return null;
  }
}

function failure(status: number, body: unknown): Answer<never> {
  const said = problemSchema.safeParse(body);
  const problem = said.success ? (said.data.detail ?? said.data.title) : `The daemon answered ${status}.`;
  if (status === 401) return { ok: false, why: 'unpaired', detail: problem };
  if (status === 413 || status === 422) return { ok: false, why: 'too-much', detail: problem };
  return { ok: false, why: 'refused', detail: problem };
}
