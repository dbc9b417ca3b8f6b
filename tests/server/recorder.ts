import { connect, createServer, type Server } from 'node:net';
import { listen } from '../support/port.ts';

/** Stands on the wire in front of a port, and keeps every byte that passes in either direction. */
export interface Recorder {
  port: number;
  /** Whether a word, as UTF-8, was among them. */
  heard(word: string): boolean;
  bytes(): number;
  stop(): void;
}

export async function record(port: number): Promise<Recorder> {
  const tape: Buffer[] = [];
  const keep = (chunk: Buffer) => void tape.push(chunk);
  const server: Server = createServer((near) => {
    const far = connect({ port, host: '127.0.0.1' });
    for (const end of [near, far]) {
      end.on('data', keep);
      end.on('error', () => undefined);
    }
    near.pipe(far).pipe(near);
  });
  return {
    port: await listen(server),
    heard: (word) => Buffer.concat(tape).includes(Buffer.from(word, 'utf8')),
    bytes: () => tape.reduce((sum, chunk) => sum + chunk.length, 0),
    stop: () => void server.close(),
  };
}
