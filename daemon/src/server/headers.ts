import {
  type IncomingMessage,
  type OutgoingHttpHeader,
  type OutgoingHttpHeaders,
  ServerResponse,
} from 'node:http';
import type { HttpBindings } from '@hono/node-server';

/** Where an answer goes; nowhere in tests without a socket. */
export type Headed = Partial<HttpBindings>;

/**
 * Keep a page of this daemon to itself, and answers out of caches; what a route says by the same name goes before it. No
 * Strict-Transport-Security: on loopback there is no TLS to go back to.
 */
const ALWAYS = {
  'content-security-policy':
    "default-src 'self'; base-uri 'none'; object-src 'none'; form-action 'self'; frame-ancestors 'none'",
  'x-content-type-options': 'nosniff',
  'x-frame-options': 'DENY',
  'referrer-policy': 'no-referrer',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'cache-control': 'no-store',
};

type Named = OutgoingHttpHeaders | OutgoingHttpHeader[];

/** An answer over a socket: its headers go out as one list, because to set each by itself takes a tenth of an answer. */
export class OwnResponse<Request extends IncomingMessage = IncomingMessage> extends ServerResponse<Request> {
  override writeHead(status: number, reason?: string | Named, last?: Named): this {
    const named = typeof reason === 'string' ? last : reason;
    // So does Node itself refuse what is not HTTP, without a body.
    if (Array.isArray(named)) return super.writeHead(status, named);
    return super.writeHead(status, { ...ALWAYS, ...named });
  }
}

/** An answer that an extension may read. */
export function readableBy(
  extension: string,
  { outgoing }: Headed,
  answer: () => Response | Promise<Response>,
): Response | Promise<Response> {
  const headers = { 'access-control-allow-origin': extension, vary: 'Origin' };
  if (outgoing === undefined) return added(answer(), headers);
  for (const [name, value] of Object.entries(headers)) outgoing.setHeader(name, value);
  return answer();
}

/** Without a socket, an answer with the headers that OwnResponse gives it. */
export function owned(
  { outgoing }: Headed,
  answer: Response | Promise<Response>,
): Response | Promise<Response> {
  return outgoing === undefined ? added(answer, ALWAYS) : answer;
}

async function added(
  answer: Response | Promise<Response>,
  own: Readonly<Record<string, string>>,
): Promise<Response> {
  const { headers } = await answer;
  for (const [name, value] of Object.entries(own)) if (!headers.has(name)) headers.set(name, value);
  return answer;
}
