import type { Store, StoredDevice } from '../store/store.ts';
import type { Hub } from './hub.ts';
import type { PageFiles } from './pages.ts';
import type { Seasons } from './seasons.ts';
import type { Writer } from './writer.ts';

/** What the routes work with. */
export interface Deps {
  store: Store;
  writer: Writer;
  hub: Hub;
  seasons: Seasons;
  /** ms since 1970. */
  now(): number;
  /** Whether a Host header names this daemon. */
  isOwnHost(host: string): boolean;
  /** The built dashboard; null when it was not built. */
  pages: PageFiles | null;
}

/** What middleware leaves for a route. */
export interface Env {
  Variables: {
    /** Origin of the extension that asks; null for the dashboard and for requests without an Origin. */
    extension: string | null;
    device: StoredDevice;
  };
}
