import type { Json } from '@platewright/core/changes/change.ts';
import type { MiddlewareHandler } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { validator } from 'hono/validator';
import type * as z from 'zod/mini';
import type { Env } from './deps.ts';
import { ProblemError } from './problem.ts';

/** A push of 500 changes is about half a MB. */
const MAX_BODY_BYTES = 4 * 1024 * 1024;

/** Deeper than any record, and shallow enough for a parser that calls itself. */
const MAX_DEPTH = 32;

const countBody = bodyLimit({ maxSize: MAX_BODY_BYTES, onError: tooLarge });

/** Goes on unless the body is too large. */
export const limitBody: MiddlewareHandler<Env> = (c, next) => {
  const { method } = c.req;
  if (method === 'GET' || method === 'HEAD') return next();
  // Over a socket the length that was said is all that is read; counting a body means to copy it.
  if (c.env.incoming === undefined || c.req.header('transfer-encoding') !== undefined)
    return countBody(c, next);
  return Number(c.req.header('content-length') ?? 0) > MAX_BODY_BYTES ? tooLarge() : next();
};

function tooLarge(): never {
  throw new ProblemError(413, 'too-large', {
    detail: 'A request may have 4 MiB. Send fewer changes at a time.',
  });
}

/** The body, checked by a schema. A simple cross-site form can't send this content type. */
export function json<S extends z.ZodMiniType>(schema: S) {
  return validator('json', (value: Json, c): z.output<S> => {
    if (!/^application\/json *(;|$)/i.test(c.req.header('content-type') ?? '')) {
      throw new ProblemError(415, 'not-json', { detail: 'Send the body as application/json.' });
    }
    if (isDeeperThan(value, MAX_DEPTH)) throw invalid([{ pointer: '', detail: 'nested too deeply' }]);
    return check(schema, value);
  });
}

/** The query, checked by a schema; every parameter may be given once. */
export function query<S extends z.ZodMiniType>(schema: S) {
  return validator('query', (value): z.output<S> => check(schema, value));
}

export function invalid(errors: { pointer: string; detail: string }[]): ProblemError {
  const first = errors[0];
  const detail = `${first?.pointer ?? ''}: ${first?.detail ?? 'not valid'}. Mend it and send again.`;
  return new ProblemError(422, 'invalid', { detail, errors });
}

/** JSON pointer (RFC 6901) of a path. */
export function pointer(path: readonly PropertyKey[]): string {
  return path.map((step) => `/${String(step).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('');
}

function check<S extends z.ZodMiniType>(schema: S, value: unknown): z.output<S> {
  const parsed = schema.safeParse(value);
  if (parsed.success) return parsed.data;
  throw invalid(
    parsed.error.issues
      .slice(0, 20)
      .map(({ path, message }) => ({ pointer: pointer(path), detail: message })),
  );
}

function isDeeperThan(value: Json, depth: number): boolean {
  let level: Json[] = [value];
  for (let d = 0; d <= depth; d++) {
    level = level.flatMap((item) => (item !== null && typeof item === 'object' ? Object.values(item) : []));
    if (level.length === 0) return false;
  }
  return true;
}
