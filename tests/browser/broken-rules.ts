import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';

const WCAG_22_AA = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22a', 'wcag22aa'];
const schemes = ['light', 'dark'] as const;
const widths = [1280, 360] as const;

/** Rules of WCAG that a page breaks as it stands, in both colour schemes, with the places where. */
export async function broken(page: Page): Promise<string[]> {
  await page.bringToFront();
  const found: string[] = [];
  for (const colorScheme of schemes) {
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
    const { violations } = await new AxeBuilder({ page }).setLegacyMode().withTags(WCAG_22_AA).analyze();
    for (const { id, help, nodes } of violations) {
      found.push(`${colorScheme}: ${id}: ${help} ${nodes.map(({ target }) => target.join(' ')).join(', ')}`);
    }
  }
  return found;
}

/** Rules that a page breaks at a desk's width and at a phone's, where nothing may stick out. */
export async function brokenAtEachWidth(page: Page): Promise<string[]> {
  const found: string[] = [];
  for (const width of widths) {
    await page.setViewportSize({ width, height: 800 });
    const wider = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    if (wider > 0) found.push(`${width} px: the page is ${wider} px wider`);
    for (const sentence of await broken(page)) found.push(`${width} px: ${sentence}`);
  }
  return found;
}
