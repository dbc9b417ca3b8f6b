import type { Locator, Page } from 'playwright-core';
import { Dashboard } from './dashboard.ts';

/** The weekly call on the dashboard. */
export class WeekPage extends Dashboard {
  readonly slider: Locator;
  readonly forecast: Locator;
  readonly evidence: Locator;

  constructor(page: Page) {
    super(page);
    this.slider = page.getByRole('slider', { name: /^What if the mark were/ });
    this.forecast = page.getByRole('img', { name: /^Forecast of four weeks/ });
    this.evidence = this.section('Evidence');
  }

  /** The mark that the call proposes, g, as its button says it. */
  proposed(): Promise<number> {
    return numberIn(this.button(/^Accept \d+ g$/));
  }

  button(name: string | RegExp): Locator {
    return this.page.getByRole('button', { name });
  }

  /** Body mass that the forecast ends at, under the slider. */
  afterFourWeeks(): Promise<number> {
    return numberIn(
      this.page
        .getByRole('definition')
        .filter({ hasText: /^\d+\.\d (kg|lb)/ })
        .last(),
    );
  }

  /** Text of what has the focus. */
  atFocus(): Promise<string> {
    return this.page.evaluate(() => document.activeElement?.textContent ?? '');
  }

  /** Waits until the page says what was decided and which mark is in force. */
  async decided(words: string, markG: number): Promise<void> {
    await this.page.getByText(`${words}. The mark is set to ${markG} g of carbohydrate a day.`).waitFor();
  }
}

/** The first number that an element says. */
export async function numberIn(element: Locator): Promise<number> {
  return Number(/\d+(?:\.\d+)?/.exec((await element.textContent()) ?? '')?.[0]);
}
