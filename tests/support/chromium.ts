import { existsSync } from 'node:fs';

const CANDIDATES = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

/** Path of a Chromium on this machine, or null. `CHROMIUM` names another one. */
export function chromiumPath(): string | null {
  const named = process.env.CHROMIUM;
  return [...(named === undefined ? [] : [named]), ...CANDIDATES].find((path) => existsSync(path)) ?? null;
}
