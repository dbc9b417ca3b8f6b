import { createHash, X509Certificate } from 'node:crypto';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { athleteFields, change, entryFields, phaseFields } from '../server/fields.ts';
import { type Served, served } from '../server/served.ts';
import { BUILT_EXTENSION, type LoadedExtension, loadExtension } from '../support/extension.ts';
import { keepEdits } from './keep-edits.ts';
import { OptionsPage } from './pages/options.ts';
import { PopupPage } from './pages/popup.ts';

const HOST = 'https://127.0.0.1/*';
const folder = mkdtempSync(join(tmpdir(), 'platewright-lan-'));
const extensionFolder = join(folder, 'extension');
const profile = join(folder, 'profile');

let daemon: Served;
let browser: LoadedExtension;

beforeAll(async () => {
  daemon = await served({ lan: true });
  const kept = [change('a', 'athlete', 'ann', athleteFields), change('p', 'phase', 'p', phaseFields)];
  await daemon.store.append(kept, (one) => one);
  await allowHost();
});
afterEach(() => browser.close());
afterAll(async () => {
  await daemon.stop();
  rmSync(folder, { recursive: true, force: true });
});

/**
 * No test can press “Allow” in Chromium's own window. So the profile has met the extension before, in a version that
 * needs the host from the start; the built one, which asks for it, then has what was allowed.
 */
async function allowHost(): Promise<void> {
  cpSync(BUILT_EXTENSION, extensionFolder, { recursive: true });
  const path = join(extensionFolder, 'manifest.json');
  const built = readFileSync(path, 'utf8');
  const manifest = JSON.parse(built);
  writeFileSync(
    path,
    JSON.stringify({ ...manifest, host_permissions: [...manifest.host_permissions, HOST] }),
  );
  const met = await loadExtension(extensionFolder, profile);
  await met.openOptions();
  await met.close();
  writeFileSync(path, built);
}

async function open(flags: readonly string[] = []): Promise<LoadedExtension> {
  const opened = await loadExtension(extensionFolder, profile, flags);
  opened.context.setDefaultTimeout(30_000);
  return opened;
}

/** What Chromium takes for an exception that a person made for one certificate. */
function accepting({ cert }: Served['certificate']): string[] {
  const key = new X509Certificate(cert).publicKey.export({ type: 'spki', format: 'der' });
  return [`--ignore-certificate-errors-spki-list=${createHash('sha256').update(key).digest('base64')}`];
}

async function pairText(): Promise<string> {
  return `127.0.0.1:${daemon.lanPort} ${await daemon.code()}`;
}

/** From the popup, which can't ask for a permission, to the options, which do. */
async function pairByOptions(typed: string): Promise<Page> {
  const popup = await browser.openPopup();
  await popup.getByLabel('Pairing code').fill(typed);
  await popup.getByText('The browser will ask whether Platewright may reach 127.0.0.1').waitFor();
  const opened = browser.context.waitForEvent('page');
  await popup.getByRole('button', { name: 'Pair' }).click();
  const options = await opened;
  await options.waitForFunction((text) => document.querySelector('input')?.value === text, typed);
  await popup.close();
  await options.getByRole('button', { name: 'Pair' }).click();
  return options;
}

describe('an extension over TLS', () => {
  it('says how to come to know a certificate that it does not know', async () => {
    browser = await open();
    const options = await pairByOptions(`https://${await pairText()}`);
    await options.getByRole('alert').filter({ hasText: 'compare the certificate' }).waitFor();
  });

  it('pairs once the certificate was accepted, shows the check of both ends, and syncs', async () => {
    browser = await open(accepting(daemon.certificate));
    const options = await pairByOptions(`https://${await pairText()}`);
    await options.getByText(`Paired with the daemon at https://127.0.0.1:${daemon.lanPort}`).waitFor();
    expect(daemon.checks).toHaveLength(1);
    await options.getByText(`check is ${daemon.checks[0]};`).waitFor();

    const popup = new PopupPage(await browser.openPopup());
    await popup.line.waitFor();
    const entry = {
      athlete: 'ann',
      kind: 'entry',
      record: 'over-tls',
      fields: { ...entryFields('2026-03-02') },
    };
    await keepEdits(popup.page, [entry]);
    await new OptionsPage(options).allSent();
    expect(await daemon.store.record('ann', 'over-tls')).not.toBeNull();
  });
});

it('shows no check over loopback, where nobody can stand between, and where one would change with the first certificate', async () => {
  browser = await open();
  const options = await browser.openOptions();
  await options.getByRole('button', { name: 'Unpair' }).click();
  const popup = new PopupPage(await browser.openPopup());
  await popup.pair(`http://127.0.0.1:${daemon.port}`, await daemon.code());
  await options.getByText(`Paired with the daemon at http://127.0.0.1:${daemon.port}`).waitFor();
  expect(await options.getByText('check is').count()).toBe(0);
});
