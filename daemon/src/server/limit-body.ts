import type { MiddlewareHandler } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import type { Env } from './deps.ts';
import { ProblemError } from './problem.ts';

/** A push of 1,000 changes is about 400 kB; changes with long texts are more. */
const MAX_BODY_BYTES = 4 * 1024 * 1024;

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
    detail: 'A request may have 4 MiB. Send fewer changes at a time, or a smaller picture.',
  });
}
