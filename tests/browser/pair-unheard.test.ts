import { once } from 'node:events';
import { createServer } from 'node:http';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type LoadedExtension, loadExtension } from '../support/extension.ts';
import { listen } from '../support/port.ts';
import { killWorker } from './kill-worker.ts';

let browser: LoadedExtension;
beforeAll(async () => {
  browser = await loadExtension();
  browser.context.setDefaultTimeout(30_000);
});
afterAll(() => browser.close());

it('pairing can be tried again when the worker was stopped in the middle of it', async () => {
  const daemon = createServer();
  const asked = once(daemon, 'request');
  const port = await listen(daemon);
  const page = await browser.openOptions();
  await page.getByLabel('Pairing code').fill(`http://127.0.0.1:${port} ABCD-2345`);
  await page.keyboard.press('Enter');
  await asked;
  await killWorker(page);
  await page.getByRole('alert').filter({ hasText: 'stopped the extension’s worker' }).waitFor();
  expect(await page.getByRole('button', { name: 'Pair', exact: true }).isEnabled()).toBe(true);
  daemon.closeAllConnections();
  daemon.close();
});
