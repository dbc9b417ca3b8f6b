import type { Page } from 'playwright-core';

/** Stops the extension's worker as the browser does it, at once; resolves when it no longer runs. `page` is one of the extension's. */
export async function killWorker(page: Page): Promise<void> {
  const session = await page.context().newCDPSession(page);
  const stopped = new Promise<void>((resolve) => {
    let ran = false;
    session.on('ServiceWorker.workerVersionUpdated', ({ versions }) => {
      // Stopping may be the first that is heard of it.
      ran ||= versions.some(({ runningStatus }) => runningStatus !== 'stopped');
      if (ran && versions.some(({ runningStatus }) => runningStatus === 'stopped')) resolve();
    });
  });
  await session.send('ServiceWorker.enable');
  await session.send('ServiceWorker.stopAllWorkers');
  await stopped;
  await session.detach();
}
