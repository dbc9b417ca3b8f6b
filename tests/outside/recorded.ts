import { once } from 'node:events';
import { createServer, type IncomingHttpHeaders, request } from 'node:http';
import { buffer } from 'node:stream/consumers';
import { freePort } from '../support/port.ts';

/** A request as it reached the daemon, and its answer as it left. */
export interface Recorded {
  method: string;
  path: string;
  headers: IncomingHttpHeaders;
  body: Buffer;
  answer: { status: number; headers: IncomingHttpHeaders; body: Buffer };
}

/** What stands in front of a daemon and writes down all that passes. */
export interface Front {
  /** Passes on to the daemon at an address from now on, and gives its own address. */
  before(daemon: string): string;
  /** In the order in which the answers ended, a stream when it did. */
  recorded: readonly Recorded[];
  stop(): void;
}

/**
 * Stands between a browser and a daemon, and changes nothing but the address, in Host and Origin. While the daemon is gone
 * the browser's connections break, as they would on the daemon's own.
 */
export async function recordingFront(): Promise<Front> {
  const recorded: Recorded[] = [];
  let daemon = '';
  const port = await freePort();
  const url = `http://127.0.0.1:${port}`;
  const server = createServer(async (incoming, outgoing) => {
    const { method = 'GET', url: path = '/' } = incoming;
    const { origin, ...rest } = incoming.headers;
    const headers: IncomingHttpHeaders = {
      ...rest,
      host: new URL(daemon).host,
      ...(origin !== undefined && { origin: origin === url ? daemon : origin }),
    };
    const body = await buffer(incoming).catch(() => null);
    if (body === null) return;
    const sent = request(`${daemon}${path}`, { method, headers, agent: false }, (answer) => {
      outgoing.writeHead(answer.statusCode ?? 502, answer.headers);
      outgoing.flushHeaders();
      const parts: Buffer[] = [];
      answer.on('data', (part: Buffer) => {
        parts.push(part);
        outgoing.write(part);
      });
      answer.once('error', () => outgoing.destroy());
      answer.once('close', () => {
        outgoing.end();
        const { statusCode: status = 0, headers: told } = answer;
        recorded.push({
          method,
          path,
          headers,
          body,
          answer: { status, headers: told, body: Buffer.concat(parts) },
        });
      });
    });
    outgoing.once('close', () => sent.destroy());
    sent.once('error', () => outgoing.destroy());
    sent.end(body);
  });
  await once(server.listen(port, '127.0.0.1'), 'listening');
  return {
    before(address) {
      daemon = address;
      return url;
    },
    recorded,
    stop() {
      server.close();
      server.closeAllConnections();
    },
  };
}

/** Number of a recorded request, for the server that answers it once more. */
const NUMBER = 'x-recorded';

/** A server that gives each recorded request the answer that it got. */
export async function answeringAgain(recorded: readonly Recorded[]): Promise<{ url: string; stop(): void }> {
  const port = await freePort();
  const server = createServer((incoming, outgoing) => {
    const answer = recorded[Number(incoming.headers[NUMBER])]?.answer;
    if (answer === undefined) throw new Error('a request that was not recorded');
    incoming.resume();
    outgoing.writeHead(answer.status, withoutTransport(answer.headers)).end(answer.body);
  });
  await once(server.listen(port, '127.0.0.1'), 'listening');
  return { url: `http://127.0.0.1:${port}`, stop: () => void server.close() };
}

/** Sends a recorded request once more, to another address. */
export async function askAgain(
  url: string,
  { method, path, headers, body }: Recorded,
  number: number,
): Promise<{ status: number; headers: IncomingHttpHeaders; body: Buffer }> {
  const sent = request(`${url}${path}`, {
    method,
    headers: { ...withoutTransport(headers), [NUMBER]: String(number) },
    agent: false,
  });
  sent.end(body);
  const [answer] = await once(sent, 'response');
  return { status: answer.statusCode, headers: answer.headers, body: await buffer(answer) };
}

/** Headers but those that are of one connection. */
function withoutTransport({ host, connection, ...headers }: IncomingHttpHeaders): IncomingHttpHeaders {
  delete headers['transfer-encoding'];
  delete headers['keep-alive'];
  return headers;
}
