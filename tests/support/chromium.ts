import { existsSync } from 'node:fs';
import { type Browser, chromium } from 'playwright-core';

const CANDIDATES = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

/** Path of a Chromium on this machine, or null. `CHROMIUM` names another one. */
export function chromiumPath(): string | null {
  const named = process.env.CHROMIUM;
  return [...(named === undefined ? [] : [named]), ...CANDIDATES].find((path) => existsSync(path)) ?? null;
}

/** The same, where there must be one. */
export function neededChromium(): string {
  const path = chromiumPath();
  if (path === null) throw new Error('No Chromium found.');
  return path;
}

export function launchChromium(...args: string[]): Promise<Browser> {
  return chromium.launch({ executablePath: neededChromium(), chromiumSandbox: false, args });
}
