import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { type BrowserContext, chromium, type Page } from 'playwright-core';
import { neededChromium } from './chromium.ts';

export const BUILT_EXTENSION = resolve(import.meta.dirname, '../../extension/.output/chrome-mv3');
/** What a browser gives a popup. */
const POPUP_SIZE = { width: 400, height: 600 };

/** The built extension in a Chromium of its own, with a profile of its own. */
export interface LoadedExtension {
  context: BrowserContext;
  id: string;
  /** The popup's page in a tab of the popup's size. */
  openPopup(): Promise<Page>;
  openOptions(): Promise<Page>;
  close(): Promise<void>;
}

/**
 * Loads the extension from a folder, the built one unless told, into a fresh profile or one that is kept; `flags` are
 * more of Chromium's. Throws when it is not built or no Chromium is there.
 */
export async function loadExtension(
  folder = BUILT_EXTENSION,
  kept?: string,
  flags: readonly string[] = [],
): Promise<LoadedExtension> {
  const executablePath = neededChromium();
  if (!existsSync(folder)) throw new Error('The extension is not built: run npm run build:extension.');
  const profile = kept ?? mkdtempSync(join(tmpdir(), 'platewright-profile-'));
  const context = await chromium.launchPersistentContext(profile, {
    executablePath,
    headless: true,
    chromiumSandbox: false,
    args: [
      `--disable-extensions-except=${folder}`,
      `--load-extension=${folder}`,
      '--disable-gpu',
      '--disable-quic',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      '--no-first-run',
      ...flags,
    ],
  });
  const worker = context.serviceWorkers()[0] ?? (await context.waitForEvent('serviceworker'));
  const id = new URL(worker.url()).host;
  const open = async (name: string) => {
    const page = await context.newPage();
    await page.goto(`chrome-extension://${id}/${name}.html`);
    return page;
  };
  return {
    context,
    id,
    async openPopup() {
      const page = await open('popup');
      await page.setViewportSize(POPUP_SIZE);
      return page;
    },
    openOptions: () => open('options'),
    async close() {
      await context.close();
      if (kept === undefined) rmSync(profile, { recursive: true, force: true });
    },
  };
}
