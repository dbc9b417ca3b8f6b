import type { Store, StoredDevice } from '../store/store.ts';
import type { Hub } from './hub.ts';
import type { Log } from './log.ts';

/** How often it is looked what another process took back; the table holds a row for each device. */
const LOOK_MS = 3000;

interface Parts {
  store: Store;
  hub: Hub;
  log: Log;
  /** ms since 1970. */
  now(): number;
}

export type Keys = ReturnType<typeof createKeys>;

/** Takes keys of devices back: each is logged once, and its streams end. */
export function createKeys({ store, hub, log, now }: Parts) {
  /** Null until the first look, which tells of nothing: who took a key back before the start has told it then. */
  let known: Set<string> | null = null;

  function tell(device: string, by: string): void {
    known?.add(device);
    log('warn', 'key-taken-back', { device, by });
    hub.wake();
  }

  async function look(): Promise<void> {
    const revoked = (await store.devices()).filter(({ revokedAt }) => revokedAt !== null);
    if (known !== null) {
      for (const { id } of revoked) if (!known.has(id)) tell(id, 'another-process');
    }
    known ??= new Set(revoked.map(({ id }) => id));
  }

  return {
    /** `by` is the device that asked for it. */
    async takeBack(device: StoredDevice, by: string): Promise<void> {
      known?.add(device.id);
      await store.putDevice({ ...device, revokedAt: device.revokedAt ?? now() });
      tell(device.id, by);
    },

    /** Hears from now on of keys that another process takes back, such as the command line. Returns how to end that. */
    watch(): () => void {
      // A store that can't be read now is told of by whoever asks it for records.
      const again = () => void look().catch(() => undefined);
      again();
      const timer = setInterval(again, LOOK_MS).unref();
      return () => clearInterval(timer);
    },
  };
}
