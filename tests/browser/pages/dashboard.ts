import type { Locator, Page } from 'playwright-core';

export const pageNames = ['Today', 'Larder', 'Body', 'Lifts', 'Week', 'Plan', 'Devices'] as const;
export type PageName = (typeof pageNames)[number];

/** What all pages of the dashboard have in common. */
export class Dashboard {
  readonly page: Page;

  constructor(page: Page) {
    this.page = page;
  }

  /** Goes to a page by its name in the head, and waits until it shows what it was to show. */
  async go(name: PageName): Promise<void> {
    // A tab behind another is drawn once a second, which slows a test down and shows nothing more.
    await this.page.bringToFront();
    await this.page.getByRole('navigation', { name: 'Pages' }).getByRole('link', { name }).click();
    await this.page.getByRole('heading', { level: 1, name }).waitFor();
    await this.page.getByText('Reading…').first().waitFor({ state: 'detached' });
  }

  /** Waits for words in one of the places that are read out. */
  async said(text: string | RegExp): Promise<void> {
    await this.page.getByRole('status').filter({ hasText: text }).waitFor();
  }

  /** Takes back what was last done. */
  async undo(): Promise<void> {
    await this.page.getByRole('status').getByRole('button', { name: 'Undo' }).click();
  }

  /** Waits until a field has the focus, which brings it into sight. */
  async focused(label: string): Promise<void> {
    await this.page
      .locator('input:focus')
      .and(this.page.getByLabel(label, { exact: true }))
      .waitFor();
  }

  section(title: string): Locator {
    return this.page
      .locator('section')
      .filter({ has: this.page.getByRole('heading', { name: title, exact: true }) });
  }

  /** The entry of a food on the Today page. */
  entry(name: string): Locator {
    return this.page.getByRole('listitem').filter({ hasText: name }).getByText(name, { exact: true });
  }
}
