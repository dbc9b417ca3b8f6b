import type { Locator, Page } from 'playwright-core';
import { Dashboard } from './dashboard.ts';

/** The larder on the dashboard. */
export class LarderPage extends Dashboard {
  readonly labelCheck: Locator;

  constructor(page: Page) {
    super(page);
    this.labelCheck = page.getByRole('status').filter({ hasText: 'Label check' });
  }

  type(label: string, text: string): Promise<void> {
    return this.page.getByRole('textbox', { name: label, exact: true }).fill(text);
  }

  press(button: string): Promise<void> {
    return this.page.getByRole('button', { name: button, exact: true }).click();
  }

  async find(text: string): Promise<void> {
    await this.page.getByRole('searchbox', { name: 'Find a food' }).fill(text);
  }

  food(name: string): Locator {
    return this.section('Foods').getByRole('listitem').filter({ hasText: name });
  }
}
