import type { Locator, Page } from 'playwright-core';

/** The popup, as a person at it sees and presses it. */
export class PopupPage {
  readonly page: Page;
  readonly line: Locator;
  readonly options: Locator;

  constructor(page: Page) {
    this.page = page;
    this.line = page.getByRole('combobox', { name: /^Log to meal \d/ });
    this.options = page.getByRole('listbox', { name: 'Foods' }).getByRole('option');
  }

  /** Types address and code, as printed by the daemon, and waits until the day or the way to it is shown. */
  async pair(address: string, code: string): Promise<void> {
    await this.page.getByLabel('Pairing code').fill(`${address} ${code}`);
    await this.page.keyboard.press('Enter');
    await this.page.getByLabel('Pairing code').waitFor({ state: 'detached' });
  }

  /** Types a line, sees how it is read, and presses Enter. */
  async log(text: string): Promise<void> {
    await this.line.pressSequentially(text);
    await this.page.getByRole('region', { name: 'As it will be logged' }).waitFor();
    await this.line.press('Enter');
  }

  /** Waits for words in one of the places that are read out: what was done, and what waits. */
  async said(text: string | RegExp): Promise<void> {
    await this.page.getByRole('status').filter({ hasText: text }).waitFor();
  }

  meal(meal: number): Locator {
    return this.page.getByRole('region', { name: `Meal ${meal}` });
  }

  /** The entry of a food in a meal. */
  entry(meal: number, name: string): Locator {
    return this.meal(meal).getByRole('listitem').filter({ hasText: name });
  }

  /** A beam by what it says. */
  beam(words: string): Locator {
    return this.page.getByRole('img', { name: words });
  }

  /** Number of the meal that the typed line logs to. */
  async mealNow(): Promise<number> {
    const label = await this.line.getAttribute('aria-label');
    return Number(/\d+/.exec(label ?? '')?.[0]);
  }
}
