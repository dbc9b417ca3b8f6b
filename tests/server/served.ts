import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import type { Rights } from '@platewright/core/protocol/devices.ts';
import { OWNER } from '@platewright/core/protocol/rights.ts';
import { bytesFolder } from '../../daemon/src/keep/bytes.ts';
import { makeCertificate } from '../../daemon/src/network/make-certificate.ts';
import { issueCode } from '../../daemon/src/server/issue-code.ts';
import type { Limits } from '../../daemon/src/server/listen.ts';
import { serve } from '../../daemon/src/server/serve.ts';
import { type Front, noProxy } from '../../daemon/src/server/site.ts';
import { openSqliteStore } from '../../daemon/src/store/sqlite.ts';
import type { Store } from '../../daemon/src/store/store.ts';

/** The dashboard as `npm run build` leaves it. */
export const BUILT_PAGES = resolve(import.meta.dirname, '../../daemon/dashboard/dist');

/** The host name that a served daemon is set up to answer to. */
export const NAME = 'plates.test';

interface Settings {
  lan?: boolean;
  limits?: Limits;
  front?: Front;
  /** Folder of built pages. */
  pages?: string;
}

/** A daemon on real sockets, with a store of its own. */
export interface Served {
  store: Store;
  port: number;
  lanPort: number;
  certificate: { key: string; cert: string };
  /** Checks of the devices that were paired. */
  checks: string[];
  code(rights?: Rights): Promise<string>;
  renew(certificate: { key: string; cert: string }): void;
  stop(): Promise<void>;
}

export async function served({
  lan = false,
  limits,
  front = noProxy,
  pages,
}: Settings = {}): Promise<Served> {
  const folder = mkdtempSync(join(tmpdir(), 'platewright-served-'));
  const store = openSqliteStore(folder, 'owner');
  const certificate = await makeCertificate(['127.0.0.1', NAME], Date.now(), null);
  const checks: string[] = [];
  const running = await serve({
    ...{ store, port: 0, now: Date.now, pages: pages ?? join(folder, 'none'), files: bytesFolder(folder) },
    network: { lan: lan ? { port: 0, certificate } : null, names: [NAME], front },
    ...(limits && { limits }),
    paired: (_device, check) => void checks.push(check),
  });
  return {
    ...{ store, certificate, checks },
    port: running.port,
    lanPort: running.lanPort ?? 0,
    renew: running.renew,
    code: async (rights = OWNER) => (await issueCode(store, Date.now(), rights)).code,
    async stop() {
      await running.stop();
      rmSync(folder, { recursive: true });
    },
  };
}
