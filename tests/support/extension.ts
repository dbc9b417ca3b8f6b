import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { type BrowserContext, chromium, type Page, type Worker } from 'playwright-core';
import { chromiumPath } from './chromium.ts';

const BUILT = resolve(import.meta.dirname, '../../extension/.output/chrome-mv3');
/** What a browser gives a popup. */
const POPUP_SIZE = { width: 400, height: 600 };

/** The built extension in a Chromium of its own, with a profile of its own. */
export interface LoadedExtension {
  context: BrowserContext;
  id: string;
  /** The popup's page in a tab of the popup's size. */
  openPopup(): Promise<Page>;
  openOptions(): Promise<Page>;
  /** The service worker that runs now; the browser may have started another one meanwhile. */
  worker(): Promise<Worker>;
  close(): Promise<void>;
}

interface LoadSettings {
  colorScheme?: 'light' | 'dark';
  /** A profile folder to keep; without it a fresh one that is removed at the end. */
  profile?: string;
}

/** Loads the built extension. Throws when it is not built or no Chromium is there. */
export async function loadExtension(settings: LoadSettings = {}): Promise<LoadedExtension> {
  const executablePath = chromiumPath();
  if (executablePath === null) throw new Error('No Chromium found.');
  if (!existsSync(BUILT)) throw new Error('The extension is not built: run npm run build:extension.');
  const profile = settings.profile ?? mkdtempSync(join(tmpdir(), 'platewright-profile-'));
  const context = await chromium.launchPersistentContext(profile, {
    executablePath,
    headless: true,
    chromiumSandbox: false,
    colorScheme: settings.colorScheme ?? 'light',
    args: [
      `--disable-extensions-except=${BUILT}`,
      `--load-extension=${BUILT}`,
      '--disable-gpu',
      '--disable-quic',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      '--no-first-run',
    ],
  });
  const worker = async () => context.serviceWorkers()[0] ?? (await context.waitForEvent('serviceworker'));
  const id = new URL((await worker()).url()).host;
  const open = async (name: string) => {
    const page = await context.newPage();
    await page.goto(`chrome-extension://${id}/${name}.html`);
    return page;
  };
  return {
    context,
    id,
    worker,
    async openPopup() {
      const page = await open('popup');
      await page.setViewportSize(POPUP_SIZE);
      return page;
    },
    openOptions: () => open('options'),
    async close() {
      await context.close();
      if (settings.profile === undefined) rmSync(profile, { recursive: true, force: true });
    },
  };
}
