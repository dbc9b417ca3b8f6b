import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { startWorld, type World } from './world.ts';

let world: World;
let dashboard: Page;
let popup: Page;
beforeAll(async () => {
  world = await startWorld('demo');
  dashboard = await world.openDashboard();
  popup = (await world.pairExtension()).page;
  for (const page of [dashboard, popup]) await page.locator('.beam').nth(2).waitFor();
});
afterAll(() => world?.close());

/** Runs in the page: labels of beams whose ink touches the beam, or the words above it. */
function touching(): string[] {
  return [...document.querySelectorAll('.beam')].flatMap((beam) => {
    const boxes = [...beam.querySelectorAll('rect, path')].map((shape) => shape.getBoundingClientRect());
    const words = [...beam.querySelectorAll('.beam-eaten')].map((text) => inkOf(text));
    return [...beam.querySelectorAll('text')]
      .filter((label) => [...boxes, ...words].some((box) => overlap(inkOf(label), box)))
      .map((label) => label.textContent);
  });

  /** Where letters are: a fifth of a font is under the line, seven tenths above it. */
  function inkOf(text: Element): DOMRect {
    const { x, bottom, width } = text.getBoundingClientRect();
    const font = Number.parseFloat(getComputedStyle(text).fontSize);
    const leading =
      text instanceof SVGElement
        ? 0
        : (Number.parseFloat(getComputedStyle(text).lineHeight) - 1.15 * font) / 2;
    const lowest = bottom - Math.max(0, leading);
    return new DOMRect(x, lowest - 0.93 * font, width, 0.93 * font);
  }

  function overlap(a: DOMRect, b: DOMRect): boolean {
    return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
  }
}

it.each([
  { where: 'the dashboard', page: () => dashboard },
  { where: 'the popup', page: () => popup },
])(
  'a label stays clear of its beam on $where, also where the browser’s font is doubled',
  async ({ page }) => {
    await page().bringToFront();
    for (const size of ['', '32px']) {
      await page().evaluate((font) => {
        document.documentElement.style.fontSize = font;
      }, size);
      expect([size, await page().evaluate(touching)]).toEqual([size, []]);
    }
  },
);
