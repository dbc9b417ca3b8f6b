import { hash } from 'node:crypto';
import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BrowserContext, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { athleteFields, change, phaseFields } from '../server/fields.ts';
import { BUILT_PAGES, NAME, type Served, served } from '../server/served.ts';
import { neededChromium } from '../support/chromium.ts';
import { BUILT_EXTENSION } from '../support/extension.ts';
import { listen } from '../support/port.ts';
import { attacks, tools } from './attack-pages.ts';
import { pairByLink } from './pages/pair.ts';
import { PopupPage } from './pages/popup.ts';

/** Names of the attacker, which lead to this machine as after a rebinding. */
const ATTACKER = 'evil.test';
const REBOUND = 'rebound.test';

let daemon: Served;
let hostile: ReturnType<typeof createServer>;
let hostilePort: number;
let profile: string;
let context: BrowserContext;
let extension: string;

beforeAll(async () => {
  daemon = await served({ pages: BUILT_PAGES });
  await daemon.store.append([change('a', 'athlete', 'ann', { ...athleteFields, name: 'CANARY' })], (c) => c);
  await daemon.store.append([change('p', 'phase', 'p', phaseFields)], (c) => c);
  hostile = createServer((request, response) => {
    if (request.url === '/redirect')
      response
        .writeHead(307, { location: `${at('127.0.0.1')}/v1/records`, 'access-control-allow-origin': '*' })
        .end();
    else response.writeHead(200, { 'content-type': 'text/html' }).end('<!doctype html><body>hostile');
  });
  hostilePort = await listen(hostile);
  profile = mkdtempSync(join(tmpdir(), 'platewright-attacked-'));
  const executablePath = neededChromium();
  context = await chromium.launchPersistentContext(profile, {
    ...{ executablePath, headless: true, chromiumSandbox: false },
    args: [
      `--disable-extensions-except=${BUILT_EXTENSION},${otherExtension()}`,
      `--load-extension=${BUILT_EXTENSION},${otherExtension()}`,
      `--host-resolver-rules=MAP ${ATTACKER} 127.0.0.1, MAP ${REBOUND} 127.0.0.1, MAP ${NAME} 127.0.0.1`,
      // Some browsers keep pages from this machine’s ports by themselves; the daemon must not lean on that.
      '--disable-features=LocalNetworkAccessChecks',
      ...['--disable-gpu', '--disable-background-networking', '--no-first-run', '--disable-popup-blocking'],
    ],
  });
  context.setDefaultTimeout(30_000);
  const worker = context.serviceWorkers()[0] ?? (await context.waitForEvent('serviceworker'));
  extension = new URL(worker.url()).host;
  const popup = await context.newPage();
  await popup.goto(`chrome-extension://${extension}/popup.html`);
  await new PopupPage(popup).pair(at('127.0.0.1'), await daemon.code());
  await popup.close();
  for (const host of ['127.0.0.1', 'localhost']) {
    const page = await context.newPage();
    await pairByLink(page, `${at(host)}/#pair=${await daemon.code()}`);
    await page.getByRole('navigation', { name: 'Pages' }).waitFor();
    await page.close();
  }
}, 120_000);

afterAll(async () => {
  await context.close();
  hostile.close();
  await daemon.stop();
  rmSync(profile, { recursive: true, force: true });
});

/** An extension of a stranger, which may read this machine's addresses. */
function otherExtension(): string {
  const folder = join(profile, 'other');
  mkdirSync(folder, { recursive: true });
  const manifest = {
    manifest_version: 3,
    name: 'Other',
    version: '1',
    host_permissions: ['http://127.0.0.1/*'],
  };
  writeFileSync(join(folder, 'manifest.json'), JSON.stringify(manifest));
  writeFileSync(join(folder, 'page.html'), '<!doctype html><body>');
  return folder;
}

/** Browsers name an unpacked extension by its folder: 128 bits of a hash, in the letters from a to p. */
function idOf(folder: string): string {
  const digits = [...hash('sha256', folder, 'hex').slice(0, 32)];
  return digits.map((digit) => String.fromCharCode(97 + Number.parseInt(digit, 16))).join('');
}

function at(host: string, port = daemon.port): string {
  return `http://${host}:${port}`;
}

/** All that the store holds, but for when devices were last seen. */
async function state(): Promise<string> {
  const { store } = daemon;
  const devices = (await store.devices()).map(({ lastSeenAt: _, ...device }) => device);
  return JSON.stringify([await store.lastSeq(), await store.records({}), devices]);
}

async function given(page: Page, target: string, body: string): Promise<string> {
  const [asset] = readdirSync(join(BUILT_PAGES, 'assets')).filter((name) => name.endsWith('.js'));
  const values = {
    ...{ daemon: target, hostile: new URL(page.url()).origin, extension, asset: `/assets/${asset}` },
    device: (await daemon.store.devices())[0]?.id ?? '',
    edit: JSON.stringify({ edits: [{ kind: 'athlete', athlete: 'ann', fields: { name: 'OWNED' } }] }),
  };
  const source = `(async () => {
    const { daemon, hostile, extension, asset, device, edit } = ${JSON.stringify(values)};
    ${tools}
    ${body}
  })().catch(() => '')`;
  return String(await page.evaluate(source));
}

/** Where the hostile page stands, and by which address it goes for the daemon. */
const stands = {
  'another site': () => [at(ATTACKER, hostilePort), at('127.0.0.1')] as const,
  'another port of this machine': () => [at('127.0.0.1', hostilePort), at('127.0.0.1')] as const,
  'another port, by name': () => [at('localhost', hostilePort), at('localhost')] as const,
  'a name that was rebound': () => [at(REBOUND), at(REBOUND)] as const,
};

describe.each(Object.entries(stands))('from %s', (_, stand) => {
  let page: Page;
  const answers: number[] = [];
  beforeAll(async () => {
    const [own] = stand();
    page = await context.newPage();
    // After a rebinding the page is from the attacker’s server, and what it asks for now goes to the daemon.
    if (new URL(own).port === String(daemon.port)) {
      await page.route(`${own}/attack`, (route) =>
        route.fulfill({ contentType: 'text/html', body: '<!doctype html><body>hostile' }),
      );
    }
    page.on('response', (response) => {
      if (new URL(response.url()).port === String(daemon.port)) answers.push(response.status());
    });
    await page.goto(`${own}/attack`);
  });
  afterAll(() => page.close());

  it.each(Object.entries(attacks))('%s changes nothing and reads nothing', async (_name, body) => {
    const [, target] = stand();
    const before = await state();
    const read = await given(page, target, body);
    expect(read).not.toMatch(/CANARY|athlete|device|platewright|"|image|script|open|seq/i);
    expect(await state()).toBe(before);
  });

  it('the attacks did reach the daemon, which refused them', () => {
    expect(answers.filter((status) => status >= 400).length).toBeGreaterThan(4);
  });
});

it('an extension that may read this address does not get in by the dashboard’s cookie', async () => {
  const page = await context.newPage();
  await page.goto(`chrome-extension://${idOf(otherExtension())}/page.html`);
  const cookies: (string | undefined)[] = [];
  const statuses: number[] = [];
  page.on('response', async (response) => {
    statuses.push(response.status());
    cookies.push((await response.request().allHeaders()).cookie);
  });
  const before = await state();
  for (const [name, body] of Object.entries(attacks)) {
    if (!/^(fetch|write|a device|XML|an image of|EventSource)/.test(name)) continue;
    const read = await given(page, at('127.0.0.1'), body);
    expect(read, name).not.toMatch(/CANARY|"athletes"|"records"|"seq"/);
  }
  expect(await state()).toBe(before);
  await expect.poll(() => cookies.some((cookie) => cookie?.includes('platewright'))).toBe(true);
  expect(statuses.filter((status) => status < 400)).toEqual([]);
  await page.close();
});

it('the same tools read and write what they may, from the dashboard itself', async () => {
  const page = await context.newPage();
  await page.goto(at('127.0.0.1'));
  expect(await given(page, at('127.0.0.1'), attacks['fetch with credentials'] ?? '')).toContain('CANARY');
  expect(await given(page, at('127.0.0.1'), attacks.EventSource ?? '')).toContain('seq');
  const written = await given(page, at('127.0.0.1'), attacks['write as JSON, which asks first'] ?? '');
  expect(written).toContain('"ann"');
  expect(await state()).toContain('OWNED');
  await page.close();
});

it('after its key is taken back the dashboard shows pairing and no record', async () => {
  const page = await context.newPage();
  await page.goto(at('127.0.0.1'));
  await page.getByRole('heading', { level: 1, name: 'Today' }).waitFor();
  for (const device of await daemon.store.devices())
    await daemon.store.putDevice({ ...device, revokedAt: device.revokedAt ?? Date.now() });
  await page.reload();
  await page.getByLabel('Pairing code').waitFor();
  expect(await page.locator('body').textContent()).not.toMatch(/CANARY|OWNED|Protein/);
  await page.close();
});
