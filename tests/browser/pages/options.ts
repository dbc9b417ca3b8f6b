import type { Locator, Page } from 'playwright-core';
import { DATABASE } from '../../../extension/replica/reader.ts';

/** The extension's options. */
export class OptionsPage {
  readonly page: Page;
  /** The changes that the daemon refused. */
  readonly refused: Locator;

  constructor(page: Page) {
    this.page = page;
    this.refused = page.getByRole('listitem').filter({ has: page.getByRole('button', { name: 'Let go' }) });
  }

  /** Waits until so many changes wait to be sent. */
  async waiting(changes: number): Promise<void> {
    await this.page.getByText(`${changes} changes wait to be sent.`).waitFor();
  }

  /** Waits until the daemon has all that was logged here, on disk and then on the page, which may lag behind. */
  async allSent(): Promise<void> {
    await this.page.waitForFunction(nothingWaits, DATABASE);
    await this.page.getByText('None: all that was logged here is with the daemon.').waitFor();
  }
}

/** Runs in the page. */
function nothingWaits(name: string): Promise<boolean> {
  return new Promise((resolve, reject) => {
    const opening = indexedDB.open(name);
    opening.onerror = () => reject(opening.error);
    opening.onsuccess = () => {
      const database = opening.result;
      const range = IDBKeyRange.bound(['waiting'], ['waiting', []]);
      const counting = database
        .transaction('outbox')
        .objectStore('outbox')
        .index('[state+order]')
        .count(range);
      counting.onerror = () => reject(counting.error);
      counting.onsuccess = () => {
        database.close();
        resolve(counting.result === 0);
      };
    };
  });
}
