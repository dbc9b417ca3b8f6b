import type { Page } from 'playwright-core';

/** Opens a link with a pairing code, and presses what it waits for. */
export async function pairByLink(page: Page, link: string): Promise<void> {
  await page.goto(link);
  await page.getByRole('button', { name: 'Pair this browser' }).click();
}
