import { connect } from 'node:net';

/** Bytes sent as they are to a port of this machine, and what came back until the other end hung up or was quiet. */
export function rawly(port: number, ...parts: readonly (string | Uint8Array)[]): Promise<string> {
  return new Promise((resolve) => {
    const socket = connect({ port, host: '127.0.0.1' });
    let answer = '';
    const end = () => {
      socket.destroy();
      resolve(answer);
    };
    socket.setEncoding('latin1');
    socket.on('data', (chunk: string) => {
      answer += chunk;
      // An answer that is there may have no end.
      socket.setTimeout(50);
    });
    socket.once('close', end);
    socket.once('error', end);
    socket.setTimeout(300, end);
    socket.once('connect', () => {
      for (const part of parts) socket.write(part);
    });
  });
}

/** The status of an answer; 0 when there was none. */
export function statusOf(answer: string): number {
  return Number(/^HTTP\/1\.[01] (\d{3})/.exec(answer)?.[1] ?? 0);
}
