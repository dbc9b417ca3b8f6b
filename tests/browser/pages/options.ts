import type { Locator, Page } from 'playwright-core';

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

  /** Waits until the daemon has all that was logged here. */
  async allSent(): Promise<void> {
    await this.page.getByText('None: all that was logged here is with the daemon.').waitFor();
  }
}
