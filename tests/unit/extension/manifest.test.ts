import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

const path = resolve(import.meta.dirname, '../../../extension/.output/chrome-mv3/manifest.json');

describe('the extension’s manifest', () => {
  it('the built manifest asks for exactly these permissions and hosts', () => {
    expect(existsSync(path), 'build the extension first: npm run build:extension').toBe(true);
    const manifest = JSON.parse(readFileSync(path, 'utf8'));
    expect(manifest.permissions).toEqual(['storage', 'unlimitedStorage', 'alarms']);
    expect(manifest.host_permissions).toEqual(['http://127.0.0.1/*', 'http://localhost/*']);
    expect(manifest.optional_host_permissions).toEqual(['https://*/*']);
    expect(manifest).not.toHaveProperty('content_scripts');
    expect(manifest).not.toHaveProperty('externally_connectable');
    expect(manifest).not.toHaveProperty('web_accessible_resources');
    expect(manifest).not.toHaveProperty('content_security_policy');
  });
});
