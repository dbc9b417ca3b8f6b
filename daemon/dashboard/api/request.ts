import { type Problem, problemSchema } from '@platewright/core/protocol/records.ts';
import { PROTOCOL, PROTOCOL_HEADER } from '@platewright/core/protocol/version.ts';
import type * as z from 'zod/mini';

/** A request that failed, with what to do about it. Status 0: the daemon did not answer. */
export class ProblemError extends Error {
  readonly status: number;
  readonly problem: Problem;

  constructor(problem: Problem) {
    super(problem.title);
    this.status = problem.status;
    this.problem = problem;
  }
}

const unreachable: Problem = {
  type: 'about:blank',
  title: 'The daemon does not answer.',
  status: 0,
  detail: 'Start it with “npm start”, then try again.',
};

/** Any failure as a problem that can be shown. */
export function problemOf(error: unknown): Problem {
  if (error instanceof ProblemError) return error.problem;
  console.error(error);
  return {
    type: 'about:blank',
    title: 'Something went wrong on this page.',
    status: 0,
    detail: 'Load it anew. If it happens again, the browser’s console says what it was.',
  };
}

/** The same of a form that could not be sent, and keeps what was typed. */
export function problemOfForm(error: unknown): Problem {
  const problem = problemOf(error);
  return problem === unreachable
    ? { ...problem, detail: `${problem.detail} What you typed is still here.` }
    : problem;
}

async function send(path: string, init: RequestInit): Promise<Response> {
  let response: Response;
  try {
    response = await fetch(new URL(`v1/${path}`, document.baseURI), {
      ...init,
      headers: { [PROTOCOL_HEADER]: String(PROTOCOL), ...init.headers },
    });
  } catch {
    throw new ProblemError(unreachable);
  }
  if (response.ok) return response;
  const said = problemSchema.safeParse(await response.json().catch(() => null));
  if (said.success) throw new ProblemError(said.data);
  throw new ProblemError({
    type: 'about:blank',
    title: `The daemon answered ${response.status}, and not why.`,
    status: response.status,
    detail: 'Try again. If it happens again, look into the daemon’s log, or that of the proxy before it.',
  });
}

/** What is in an answer; one that is cut on the way is none. */
async function bodyOf(response: Response) {
  try {
    return await response.json();
  } catch (error) {
    throw error instanceof SyntaxError ? error : new ProblemError(unreachable);
  }
}

/** Asks the daemon for JSON under `/v1` and checks it. */
export async function get<T>(path: string, schema: z.ZodMiniType<T>): Promise<T> {
  return schema.parse(await bodyOf(await send(path, {})));
}

/** A view has no schema: it is computed by the same core that these pages were built with. */
export async function getView<T>(path: string): Promise<T> {
  return await bodyOf(await send(path, {}));
}

/** Sends JSON to the daemon; the answer is checked. */
export async function post<T>(path: string, body: unknown, schema: z.ZodMiniType<T>): Promise<T> {
  const init = {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  };
  return schema.parse(await bodyOf(await send(path, init)));
}

/** Sends a file; the answer does not matter. */
export async function put(path: string, file: Blob): Promise<void> {
  await send(path, { method: 'PUT', headers: { 'content-type': file.type }, body: file });
}

/** Sends a request whose answer does not matter. */
export async function tell(method: 'POST' | 'DELETE', path: string): Promise<void> {
  await send(path, { method });
}
