import type { Locator, Page } from 'playwright-core';
import { Dashboard } from './dashboard.ts';

/** The lifts on the dashboard. */
export class LiftsPage extends Dashboard {
  readonly load: Locator;

  constructor(page: Page) {
    super(page);
    this.load = page.getByRole('textbox', { name: 'Load' });
  }

  press(button: string): Promise<void> {
    return this.page.getByRole('button', { name: button, exact: true }).click();
  }

  async addLift(button: string, name: string, step: string): Promise<void> {
    await this.press(button);
    await this.page.getByRole('textbox', { name: 'Name' }).fill(name);
    await this.page.getByRole('textbox', { name: 'Smallest step' }).fill(step);
    await this.press('Save the lift');
    await this.said(`Added ${name}.`);
  }

  async record(lift: string, load: string, repetitions: string, date: string): Promise<void> {
    await this.page.getByRole('combobox', { name: 'Lift' }).selectOption(lift);
    await this.load.fill(load);
    await this.page.getByRole('textbox', { name: 'Repetitions' }).fill(repetitions);
    await this.page.getByLabel('Date', { exact: true }).fill(date);
    await this.press('Record the set');
    await this.said(`${lift}: `);
  }

  lift(section: 'Key lifts' | 'Other lifts' | 'Lifts', name: string): Locator {
    return this.section(section)
      .getByRole('listitem')
      .filter({ has: this.page.getByRole('heading', { name, exact: true }) });
  }
}
