import { MIN_PROTOCOL, PROTOCOL, PROTOCOL_HEADER } from '@platewright/core/protocol/version.ts';
import type { MiddlewareHandler } from 'hono';
import { ProblemError } from './problem.ts';

/** Tells a device that speaks another version of the wire which side to update. */
export const versionGuard: MiddlewareHandler = async (c, next) => {
  const spoken = c.req.header(PROTOCOL_HEADER);
  if (spoken !== undefined) {
    const version = /^\d{1,6}$/.test(spoken) ? Number(spoken) : 0;
    if (version < MIN_PROTOCOL) throw tooOld();
    if (version > PROTOCOL) throw tooNew();
  }
  await next();
};

function tooOld(): ProblemError {
  return new ProblemError(400, 'protocol-too-old', {
    detail: 'This extension is too old for the daemon. Update the extension; what waits in it is kept.',
  });
}

function tooNew(): ProblemError {
  return new ProblemError(400, 'protocol-too-new', {
    detail:
      'This extension is newer than the daemon. Update the daemon; what waits in the extension is kept.',
  });
}
