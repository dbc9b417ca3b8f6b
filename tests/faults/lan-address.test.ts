import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { ownAddresses } from '../../daemon/src/network/addresses.ts';
import { openSqliteStore } from '../../daemon/src/store/sqlite.ts';
import { type Daemon, platewright, startDaemon, temporaryFolder } from './daemon-process.ts';

let folder: ReturnType<typeof temporaryFolder>;
let daemon: Daemon | null = null;
beforeEach(() => {
  folder = temporaryFolder();
});
afterEach(async () => {
  await daemon?.stop('SIGKILL');
  daemon = null;
  folder.remove();
});

const [own] = ownAddresses();

it.skipIf(own === undefined)(
  'pair says the address that the machine has now, not that of the start',
  async () => {
    daemon = await startDaemon(folder.path, ['start', '--port', '0', '--lan', '--lan-port', '0']);
    await daemon.stop('SIGTERM');
    const store = openSqliteStore(join(folder.path, 'data/platewright'), 'owner');
    const kept = (await store.setting('addresses')) ?? '';
    // As if the router had given this one when the daemon was started.
    await store.putSetting('addresses', kept.replaceAll(own ?? '', '203.0.113.9'));
    await store.close();
    const { stderr } = platewright(folder.path, ['pair']);
    expect(stderr).toContain(`https://${own?.includes(':') ? `[${own}]` : own}:`);
    expect(stderr).not.toContain('203.0.113.9');
  },
);
