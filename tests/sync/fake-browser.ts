import { vi } from 'vitest';

/** What the worker asks of a browser beside IndexedDB: the storage area of extensions, in memory. */
export class FakeBrowser {
  readonly items = new Map<string, unknown>();
  /** Called before each deed; may throw or never resolve, as a disk that fails or a program that is killed there. */
  before: (deed: 'get' | 'set' | 'remove', keys: readonly string[] | null) => Promise<void> = async () => {};

  readonly storage = {
    local: {
      get: async (key: string | null) => {
        await this.before('get', key === null ? null : [key]);
        const entries = [...this.items].filter(([name]) => key === null || name === key);
        return structuredClone(Object.fromEntries(entries));
      },
      set: async (values: Record<string, unknown>) => {
        await this.before('set', Object.keys(values));
        for (const [name, value] of Object.entries(values)) this.items.set(name, structuredClone(value));
      },
      remove: async (names: string | string[]) => {
        await this.before('remove', [names].flat());
        for (const name of [names].flat()) this.items.delete(name);
      },
      setAccessLevel: async () => {},
    },
  };
}

/** A browser gives a lock later than it is asked for; Node at once. */
export function giveLocksLater(): void {
  const { request } = navigator.locks;
  vi.spyOn(navigator.locks, 'request').mockImplementation(async (...asked) => {
    await null;
    return await Reflect.apply(request, navigator.locks, asked);
  });
}
