import type { Problem } from '@platewright/core/protocol/records.ts';
import { HTTPException } from 'hono/http-exception';
import { StoreTrouble } from '../store/trouble.ts';

type Status = 400 | 401 | 403 | 404 | 405 | 409 | 413 | 415 | 422 | 429 | 500 | 503 | 507;

interface Details {
  /** What is wrong and what to do, for the person who reads it. */
  detail: string;
  errors?: { pointer: string; detail: string }[];
  headers?: Record<string, string>;
}

/** An answer that is an error, as RFC 9457 problem details. `slug` names it for programs. */
export class ProblemError extends Error {
  readonly status: Status;
  readonly slug: string;
  readonly details: Details;

  constructor(status: Status, slug: string, details: Details) {
    super(details.detail);
    this.name = 'ProblemError';
    this.status = status;
    this.slug = slug;
    this.details = details;
  }
}

const TITLES: Record<Status, string> = {
  400: 'Not understood',
  401: 'Not paired',
  403: 'Refused',
  404: 'Not found',
  405: 'Method not allowed',
  409: 'In conflict with what is stored',
  413: 'Too large',
  415: 'Not of the type asked for',
  422: 'Not valid',
  429: 'Too many tries',
  500: 'Fault in the daemon',
  503: 'The store does not answer',
  507: 'The disk is full',
};

/** The problem as a response; never with a stack, a path or what was sent. */
export function problemResponse({ status, slug, details }: ProblemError): Response {
  const { detail, errors, headers = {} } = details;
  const body: Problem = {
    type: `urn:platewright:problem:${slug}`,
    title: TITLES[status],
    status,
    detail,
    ...(errors === undefined ? {} : { errors }),
  };
  return new Response(JSON.stringify(body), {
    status,
    headers: { ...headers, 'content-type': 'application/problem+json' },
  });
}

/** Whatever was thrown, as the problem to answer with. */
export function toProblem(error: unknown): ProblemError {
  if (error instanceof ProblemError) return error;
  if (error instanceof HTTPException) {
    return new ProblemError(400, 'malformed', {
      detail: 'The request could not be read. Send JSON in UTF-8.',
    });
  }
  if (error instanceof StoreTrouble) return storeProblem(error);
  if (brokeOff(error)) {
    return new ProblemError(400, 'broken-off', { detail: 'The request broke off. Send it again.' });
  }
  return new ProblemError(500, 'fault', {
    detail: 'The daemon met a fault; what it was stands in its output. Nothing was saved by this request.',
  });
}

/** Whether the other end hung up in the middle of a body: no fault of the daemon. */
function brokeOff(error: unknown): boolean {
  return error instanceof Error && 'code' in error && error.code === 'ECONNRESET';
}

function storeProblem({ code }: StoreTrouble): ProblemError {
  if (code === 'full') {
    return new ProblemError(507, 'disk-full', {
      detail: 'The disk is full. Nothing was saved; free some space and send again.',
    });
  }
  if (code === 'damaged') {
    return new ProblemError(503, 'store-damaged', {
      detail:
        'The store is damaged and takes no changes. Run npx platewright verify where the daemon runs; it says which backup to go back to.',
    });
  }
  if (code === 'moved') {
    return new ProblemError(503, 'store-moved', {
      detail:
        'The store was moved or replaced while it was served. Nothing was saved; put it back, or start the daemon anew.',
    });
  }
  return new ProblemError(503, 'store', {
    detail: 'The store does not answer. Run npx platewright doctor where the daemon runs.',
  });
}
