import { createServer, type IncomingMessage, request, type ServerResponse } from 'node:http';
import { listen } from '../support/port.ts';

/** A line between extension and daemon that can be cut, and that can keep an answer to itself. */
export interface HoldingLine {
  readonly url: string;
  cut(): void;
  mend(): void;
  /**
   * Keeps the answer to the push after `pushes` others, and lets no more through until it is mended, because a worker may come
   * back at any time: resolves once the daemon has stored that push.
   */
  holdAfter(pushes: number): Promise<void>;
  close(): Promise<void>;
}

/** Opens a line to a daemon. */
export async function holdingLine(daemon: string): Promise<HoldingLine> {
  let isCut = false;
  let hold: { left: number; held: () => void } | null = null;

  const carry = (asked: IncomingMessage, answer: ServerResponse) => {
    if (isCut) return asked.destroy();
    const headers = { ...asked.headers, host: new URL(daemon).host };
    const onward = request(new URL(asked.url ?? '/', daemon), { method: asked.method, headers }, (said) => {
      const holding = asked.url === '/v1/push' && asked.method === 'POST' ? hold : null;
      if (holding !== null && holding.left-- === 0) {
        hold = null;
        isCut = true;
        said.resume().once('end', holding.held);
        return;
      }
      answer.writeHead(said.statusCode ?? 502, said.headers);
      said.pipe(answer);
    });
    onward.on('error', () => answer.destroy());
    answer.on('close', () => onward.destroy());
    return asked.pipe(onward);
  };

  const server = createServer(carry);
  return {
    url: `http://127.0.0.1:${await listen(server)}`,
    cut() {
      isCut = true;
      server.closeAllConnections();
    },
    mend() {
      isCut = false;
    },
    holdAfter: (pushes) =>
      new Promise((held) => {
        hold = { left: pushes, held };
      }),
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
