import { expect, it } from 'vitest';
import { ownAddresses } from '../../daemon/src/network/addresses.ts';
import { openSqliteStore } from '../../daemon/src/store/sqlite.ts';
import { useMachine } from './machine.ts';

const machine = useMachine();

const [own] = ownAddresses();

it.skipIf(own === undefined)(
  'pair says the address that the machine has now, not that of the start',
  async () => {
    const daemon = await machine().start(['start', '--port', '0', '--lan', '--lan-port', '0']);
    await daemon.stop('SIGTERM');
    const store = openSqliteStore(machine().data, 'owner');
    const kept = (await store.setting('addresses')) ?? '';
    // As if the router had given this one when the daemon was started.
    await store.putSetting('addresses', kept.replaceAll(own ?? '', '203.0.113.9'));
    await store.close();
    const { stderr } = machine().run('pair');
    expect(stderr).toContain(`https://${own?.includes(':') ? `[${own}]` : own}:`);
    expect(stderr).not.toContain('203.0.113.9');
  },
);
