import { Server } from 'node:http';
import { createAdaptorServer } from '@hono/node-server';
import type { Store } from '../store/store.ts';
import { type App, createApp } from './app.ts';
import { loopbackHosts } from './guard.ts';
import { createHub } from './hub.ts';
import { loadPages } from './pages.ts';
import { createSeasons } from './seasons.ts';
import { createWriter } from './writer.ts';

/** How long open answers may take to end when the daemon stops, ms. */
const STOP_MS = 150;

interface ServeOptions {
  store: Store;
  /** 0 for any free one. */
  port: number;
  /** Folder of the built dashboard. */
  pages: string;
  /** ms since 1970. */
  now(): number;
}

interface Running {
  port: number;
  stop(): Promise<void>;
}

/** Serves a store on the loopback interface. Rejects with the system's error when the port can't be had. */
export async function serve({ store, port, pages, now }: ServeOptions): Promise<Running> {
  let bound = port;
  const hub = createHub(await store.lastSeq());
  const app = createApp({
    store,
    hub,
    now,
    seasons: createSeasons(store),
    writer: createWriter({ store, hub, now }),
    isOwnHost: loopbackHosts(() => bound),
    pages: loadPages(pages),
  });
  const server = httpServer(app);
  bound = await listen(server, port);
  return {
    port: bound,
    async stop() {
      hub.close();
      await closed(server);
      await store.close();
    },
  };
}

function httpServer(app: App): Server {
  const serverOptions = { headersTimeout: 10_000, requestTimeout: 30_000, keepAliveTimeout: 5_000 };
  const server = createAdaptorServer({ fetch: app.fetch, serverOptions });
  if (!(server instanceof Server)) throw new TypeError('a plain HTTP server was asked for');
  return server;
}

function listen(server: Server, port: number): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', () => {
      server.off('error', reject);
      const address = server.address();
      resolve(typeof address === 'object' && address !== null ? address.port : port);
    });
  });
}

/**
 * A page asks for a new stream over its open connection, so connections are cut, not waited for; and one whose body was
 * cut off may never report its end.
 */
function closed(server: Server): Promise<void> {
  return new Promise((resolve) => {
    const cut = setTimeout(() => {
      server.closeAllConnections();
      resolve();
    }, STOP_MS);
    server.close(() => {
      clearTimeout(cut);
      resolve();
    });
  });
}
