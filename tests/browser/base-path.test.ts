import { createServer, request } from 'node:http';
import { afterEach, expect, it } from 'vitest';
import { behindProxies } from '../../daemon/src/server/site.ts';
import { athleteFields, change } from '../server/fields.ts';
import { BUILT_PAGES, type Served, served } from '../server/served.ts';
import { launchChromium } from '../support/chromium.ts';
import { listen } from '../support/port.ts';
import { pairByLink } from './pages/pair.ts';

let daemon: Served | null = null;
afterEach(async () => {
  await daemon?.stop();
  daemon = null;
});

it('the dashboard works under a path that a proxy gives it', async () => {
  daemon = await served({ pages: BUILT_PAGES, front: behindProxies('/a/b', []) });
  await daemon.store.append([change('a', 'athlete', 'ann', athleteFields)], (clock) => clock);
  const { port } = daemon;
  const proxy = createServer((incoming, outgoing) => {
    const to = {
      port,
      method: incoming.method,
      path: incoming.url,
      headers: { ...incoming.headers, host: `127.0.0.1:${port}` },
    };
    if (incoming.headers.origin !== undefined)
      Object.assign(to.headers, { origin: `http://127.0.0.1:${port}` });
    incoming.pipe(
      request(to, (answer) => {
        outgoing.writeHead(answer.statusCode ?? 502, answer.headers);
        answer.pipe(outgoing);
      }),
    );
  });
  const front = `http://127.0.0.1:${await listen(proxy)}`;
  const browser = await launchChromium();
  try {
    const page = await browser.newPage();
    page.setDefaultTimeout(30_000);
    const missed: string[] = [];
    page.on('response', (response) => {
      if (response.status() >= 404) missed.push(response.url());
    });
    await pairByLink(page, `${front}/a/b#pair=${await daemon.code()}`);
    await page.getByRole('heading', { level: 1, name: 'Today' }).waitFor();
    for (const name of ['Larder', 'Body', 'Week', 'Plan', 'Devices']) {
      await page.getByRole('link', { name, exact: true }).click();
      await page.getByRole('heading', { level: 1, name }).waitFor();
    }
    await page.reload();
    await page.getByRole('heading', { level: 1, name: 'Devices' }).waitFor();
    expect(missed).toEqual([]);
    expect(new URL(page.url()).pathname).toBe('/a/b/');
  } finally {
    await browser.close();
    proxy.close();
  }
});
