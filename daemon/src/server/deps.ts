import type { HttpBindings } from '@hono/node-server';
import type { Store, StoredDevice } from '../store/store.ts';
import type { Athletes } from './athletes.ts';
import type { Hub } from './hub.ts';
import type { Keys } from './keys.ts';
import type { Log } from './log.ts';
import type { PageFiles } from './pages.ts';
import type { Roster } from './roster.ts';
import type { Seasons } from './seasons.ts';
import type { Front, Site } from './site.ts';
import type { Writer } from './writer.ts';

/** What the routes work with. */
export interface Deps {
  store: Store;
  writer: Writer;
  hub: Hub;
  athletes: Athletes;
  seasons: Seasons;
  roster: Roster;
  keys: Keys;
  /** Folder of the files beside the store. */
  files: string;
  /** ms since 1970. */
  now(): number;
  /** Whether a Host header names this daemon. */
  isOwnHost(host: string): boolean;
  front: Front;
  /** SHA-256 of the public key that TLS goes by, in hex; empty where there is no TLS. */
  key: string;
  /** Told of each device that was paired, with the check that it shows. */
  paired(device: StoredDevice, check: string): void;
  /** Nothing is logged without one. */
  log?: Log;
  /** The built dashboard; null when it was not built. */
  pages: PageFiles | null;
}

/** What the guard leaves for a route. The socket is absent in tests without one. */
export interface Bindings extends Partial<HttpBindings> {
  site: Site;
  /** Origin of the extension that asks; null for the dashboard and for requests without an Origin. */
  extension: string | null;
  seen: Seen;
}

/** What the log is told of a request once it is known. */
interface Seen {
  /** Id of the device that asked. */
  device: string | null;
}

export interface Env {
  Bindings: Bindings;
  /** What middleware leaves for a route. */
  Variables: { device: StoredDevice };
}
