import { Server as HttpServer } from 'node:http';
import type { Server as HttpsServer } from 'node:https';
import type { AddressInfo, Server } from 'node:net';
import { createAdaptorServer } from '@hono/node-server';
import type { Certificate } from '../network/certificate.ts';
import type { App } from './app.ts';
import { OwnResponse } from './headers.ts';

/** How long open answers may take to end when the daemon stops, ms. */
const STOP_MS = 150;

/** How long a request may take, ms. */
export interface Limits {
  headers: number;
  whole: number;
  /** How often open connections are looked at. */
  checkedEvery: number;
}

const LIMITS: Limits = { headers: 10_000, whole: 30_000, checkedEvery: 2000 };

/** Ciphers of TLS 1.3 only: every browser since 2019 has it, and there is nothing weak to turn off. */
const TLS = { minVersion: 'TLSv1.3', handshakeTimeout: 10_000 } as const;

export function plainServer(app: App, limits: Limits = LIMITS): HttpServer {
  const server = createAdaptorServer({ fetch: app.fetch, serverOptions: options(limits) });
  if (!(server instanceof HttpServer)) throw new TypeError('a plain HTTP server was asked for');
  return server;
}

export async function tlsServer(
  app: App,
  certificate: Certificate,
  limits: Limits = LIMITS,
): Promise<HttpsServer> {
  // Loaded only where there is TLS, so that a start without it is quick.
  const { createServer, Server } = await import('node:https');
  const serverOptions = { ...options(limits), ...TLS, ...certificate };
  const server = createAdaptorServer({ fetch: app.fetch, createServer, serverOptions });
  if (!(server instanceof Server)) throw new TypeError('a TLS server was asked for');
  // What comes in without TLS, or breaks off, is nothing to report.
  server.on('tlsClientError', (_error, socket) => socket.destroy());
  return server;
}

/** Resolves to the port; rejects with the system's error. Without an address it listens on all of them. */
export function listen(server: Server, port: number, address?: string): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen({ port, ...(address === undefined ? {} : { host: address }) }, () => {
      server.off('error', reject);
      resolve(portOf(server.address()) ?? port);
    });
  });
}

/**
 * A page asks for a new stream over its open connection, so connections are cut, not waited for; and one whose body was
 * cut off may never report its end.
 */
export function closed(server: HttpServer | HttpsServer): Promise<void> {
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

function options({ headers, whole, checkedEvery }: Limits) {
  return {
    ServerResponse: OwnResponse,
    headersTimeout: headers,
    requestTimeout: whole,
    keepAliveTimeout: 5_000,
    connectionsCheckingInterval: checkedEvery,
  };
}

function portOf(address: AddressInfo | string | null): number | null {
  return typeof address === 'object' ? (address?.port ?? null) : null;
}
