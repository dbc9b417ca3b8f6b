import { freshAddresses } from '../network/addresses.ts';
import { type Certificate, fingerprints } from '../network/certificate.ts';
import type { Store, StoredDevice } from '../store/store.ts';
import { createApp } from './app.ts';
import { createAthletes } from './athletes.ts';
import { ownHosts } from './hosts.ts';
import { createHub } from './hub.ts';
import { createKeys } from './keys.ts';
import { closed, type Limits, listen, plainServer, tlsServer } from './listen.ts';
import { type Log, silent } from './log.ts';
import { loadPages } from './pages.ts';
import { createRoster } from './roster.ts';
import { createSeasons } from './seasons.ts';
import { type Front, noProxy } from './site.ts';
import { createWriter } from './writer.ts';

/** Who may reach the daemon besides this machine itself, and under which names. */
export interface Network {
  /** TLS on all interfaces, on a port of its own; null for loopback only. */
  lan: { port: number; certificate: Certificate } | null;
  /** Host names, in small letters. */
  names: readonly string[];
  front: Front;
}

const LOOPBACK_ONLY: Network = { lan: null, names: [], front: noProxy };

interface ServeOptions {
  store: Store;
  /** On the loopback interface; 0 for any free one. */
  port: number;
  /** Folder of the built dashboard. */
  pages: string;
  /** Folder of the files beside the store. */
  files: string;
  /** ms since 1970. */
  now(): number;
  network?: Network;
  limits?: Limits;
  log?: Log;
  /** Told of each device that was paired, with the check that it shows. */
  paired?(device: StoredDevice, check: string): void;
}

interface Running {
  port: number;
  /** Null when only loopback is served. */
  lanPort: number | null;
  /** Goes on with another certificate for new connections. */
  renew(certificate: Certificate): void;
  stop(): Promise<void>;
}

/** Serves a store. Rejects with the system's error when a port can't be had. */
export async function serve(options: ServeOptions): Promise<Running> {
  const {
    store,
    port,
    pages,
    files,
    now,
    network = LOOPBACK_ONLY,
    limits,
    log = silent,
    paired = () => undefined,
  } = options;
  const { lan, names, front } = network;
  const ports: number[] = [];
  const addresses = lan === null ? () => [] : freshAddresses(now);
  const hub = createHub(await store.lastSeq());
  const keys = createKeys({ store, hub, log, now });
  const [athletes, seasons] = [createAthletes(store), createSeasons(store)];
  const app = createApp({
    ...{ store, hub, keys, files, now, front, paired, log },
    ...{ athletes, seasons, roster: createRoster({ store, athletes, seasons, now }) },
    writer: createWriter({ store, hub, now }),
    isOwnHost: ownHosts(() => ({ ports, addresses: addresses(), names })),
    pages: loadPages(pages),
    key: lan === null ? '' : fingerprints(lan.certificate).key,
  });
  const own = plainServer(app, limits);
  const open = lan === null ? null : await tlsServer(app, lan.certificate, limits);
  ports.push(await listen(own, port, '127.0.0.1'));
  if (open !== null && lan !== null) {
    const bound = await listen(open, lan.port).catch(async (error: unknown) => {
      await closed(own);
      throw error;
    });
    ports.push(bound);
  }
  const endWatch = keys.watch();
  return {
    port: ports[0] ?? port,
    lanPort: ports[1] ?? null,
    renew: (certificate) => open?.setSecureContext(certificate),
    async stop() {
      endWatch();
      hub.close();
      await Promise.all([closed(own), ...(open === null ? [] : [closed(open)])]);
      await store.close();
    },
  };
}
