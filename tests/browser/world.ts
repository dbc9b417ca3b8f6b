import type { Page } from 'playwright-core';
import { type Daemon, startDaemon } from '../faults/daemon-process.ts';
import { type LoadedExtension, loadExtension } from '../support/extension.ts';
import { temporaryFolder } from '../support/folder.ts';
import { pairByLink } from './pages/pair.ts';
import { PopupPage } from './pages/popup.ts';

/** A loaded machine takes its time; what is asserted never depends on it. */
const PATIENCE_MS = 30_000;

/** A daemon on a folder of its own, and a Chromium of its own with the built extension. */
export interface World {
  readonly extension: LoadedExtension;
  /** Where the daemon serves, now and after each start. */
  readonly url: string;
  stopDaemon(): Promise<void>;
  /** Starts it again, on the same port and the same store. */
  startDaemon(): Promise<void>;
  /** Opens the dashboard by the link that the daemon printed, which pairs this browser. */
  openDashboard(size?: { width: number; height: number }): Promise<Page>;
  /** Opens the popup and pairs the extension, over `address` where something stands between the two. */
  pairExtension(address?: string): Promise<PopupPage>;
  openPopup(): Promise<PopupPage>;
  close(): Promise<void>;
}

interface Around {
  /** Address of the database that holds the store; without one it is in a file. */
  store: string | null;
  /** Puts something between the browser and the daemon at an address, and gives the address that the browser asks then. */
  front(url: string): string;
}

/** Starts `platewright start`, or `platewright demo`. */
export async function startWorld(
  command: 'start' | 'demo' = 'start',
  { store = null, front = (url) => url }: Partial<Around> = {},
): Promise<World> {
  const folder = temporaryFolder();
  const start = (port: string) =>
    startDaemon(folder.path, [command, '--port', port, ...(store === null ? [] : ['--store', store])]);
  let daemon = await start('0');
  const url = front(daemon.url);
  const { port } = new URL(daemon.url);
  const extension = await loadExtension();
  extension.context.setDefaultTimeout(PATIENCE_MS);
  let link: string | null = linkOf(daemon).replace(daemon.url, url);

  const openPopup = async () => new PopupPage(await extension.openPopup());
  return {
    extension,
    url,
    openPopup,
    async stopDaemon() {
      await daemon.stop('SIGTERM');
    },
    async startDaemon() {
      daemon = await start(port);
    },
    async openDashboard(size = { width: 1200, height: 900 }) {
      const page = await extension.context.newPage();
      await page.setViewportSize(size);
      if (link === null) await page.goto(url);
      else await pairByLink(page, link);
      link = null;
      await page.getByRole('navigation', { name: 'Pages' }).or(page.locator('.set-up')).waitFor();
      return page;
    },
    async pairExtension(address = url) {
      const popup = await openPopup();
      await popup.pair(address, daemon.code);
      return popup;
    },
    async close() {
      await extension.close();
      await daemon.stop('SIGTERM');
      folder.remove();
    },
  };
}

function linkOf({ lines }: Daemon): string {
  const link = lines.map((line) => /http:\S+#pair=\S+/.exec(line)?.[0]).find((found) => found !== undefined);
  if (link === undefined) throw new Error(`no link to the dashboard: ${lines.join(' ')}`);
  return link;
}
