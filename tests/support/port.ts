import { once } from 'node:events';
import { createServer, type Server } from 'node:net';

/** Has a server listen on some free port of this machine, for this machine alone. Returns the port. */
export async function listen(server: Server): Promise<number> {
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  const address = server.address();
  if (typeof address !== 'object' || address === null) throw new Error(`no port, but ${address}`);
  return address.port;
}

/** A port that nothing listens on. */
export async function freePort(): Promise<number> {
  const server = createServer();
  const port = await listen(server);
  server.close();
  await once(server, 'close');
  return port;
}
