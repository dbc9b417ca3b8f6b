import { changeSchema } from '@platewright/core/changes/change.ts';
import { browser } from 'wxt/browser';
import type { SecondCopy } from '../replica/second-copy.ts';

const UNSENT = 'unsent ';

/** The second copy in the storage area of extensions, which is another file than IndexedDB's; an item for each change. */
export const secondCopy: SecondCopy = {
  async put(changes) {
    if (changes.length === 0) return;
    await browser.storage.local.set(
      Object.fromEntries(changes.map((change) => [UNSENT + change.id, change])),
    );
  },
  async drop(ids) {
    if (ids.length > 0) await browser.storage.local.remove(ids.map((id) => UNSENT + id));
  },
  async ids() {
    return Object.keys(await all()).map((key) => key.slice(UNSENT.length));
  },
  async read() {
    return Object.values(await all()).flatMap((value) => {
      const parsed = changeSchema.safeParse(value);
      return parsed.success ? parsed.data : [];
    });
  },
};

async function all(): Promise<Record<string, unknown>> {
  const items = await browser.storage.local.get(null);
  return Object.fromEntries(Object.entries(items).filter(([key]) => key.startsWith(UNSENT)));
}
