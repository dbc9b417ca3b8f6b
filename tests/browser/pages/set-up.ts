import type { Locator, Page } from 'playwright-core';

/** The first run of the dashboard. */
export class SetUpPage {
  readonly page: Page;
  readonly targets: Locator;

  constructor(page: Page) {
    this.page = page;
    this.targets = page.getByRole('complementary', { name: 'Targets' });
  }

  choose(legend: string, option: string): Promise<void> {
    return this.page
      .getByRole('group', { name: legend, exact: true })
      .getByText(option, { exact: true })
      .click();
  }

  type(label: string, text: string): Promise<void> {
    return this.page.getByRole('textbox', { name: label, exact: true }).fill(text);
  }

  async start(): Promise<void> {
    await this.page.getByRole('button', { name: 'Start with these targets' }).click();
    await this.page.getByRole('heading', { level: 1, name: 'Today' }).waitFor();
  }
}
