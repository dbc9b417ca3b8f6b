import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = resolve(import.meta.dirname, '../..');

const sources = ['shared-core', 'daemon/src', 'daemon/dashboard', 'extension']
  .flatMap((folder) => readdirSync(join(root, folder), { recursive: true, withFileTypes: true }))
  .filter((item) => item.isFile() && /\.tsx?$/.test(item.name))
  .map((item) => join(item.parentPath, item.name))
  .filter((path) => !/node_modules|\/\.wxt\/|\/\.output\/|\/dist\//.test(path))
  .map((path) => ({ path: relative(root, path), text: readFileSync(path, 'utf8') }));

/** Paths of the sources that match. */
function using(pattern: RegExp): string[] {
  return sources.filter(({ text }) => pattern.test(text)).map(({ path }) => path);
}

describe('dangerous code', () => {
  it('finds the sources it speaks about', () => {
    expect(sources.length).toBeGreaterThan(200);
  });

  it('only the build spawns, with a fixed list and no shell', () => {
    expect(using(/child_process/)).toEqual(['daemon/src/cli/build.ts']);
    expect(using(/shell:/)).toEqual([]);
  });

  it('SHA-256 is the only hash in the sources', () => {
    expect(using(/createHash|createHmac/)).toEqual([]);
    // Browsers have no other way; the algorithm must stand in the call.
    expect(using(/subtle\.digest(?!\('SHA-256')/)).toEqual([]);
    for (const { path, text } of sources) {
      for (const [, name] of text.matchAll(/\bhash\(\s*'([^']+)'/g)) expect(name, path).toBe('sha256');
    }
    expect(using(/\bmd5\b|\bsha-?1\b/i)).toEqual([]);
  });

  it('the slow hash stands in one place, and never holds up other requests', () => {
    expect(using(/scrypt|pbkdf2|argon2/i)).toEqual(['daemon/src/server/secrets.ts']);
    expect(using(/scryptSync/)).toEqual([]);
  });

  it('no text is run as code or put on a page as markup', () => {
    expect(using(/\beval\(|new Function\(|innerHTML|outerHTML|insertAdjacentHTML|document\.write/)).toEqual(
      [],
    );
    expect(using(/dangerouslySetInnerHTML/)).toEqual([]);
    // Makes code from schemas; never in what a page loads.
    expect(using(/\bz\.compile\(/)).toEqual(['daemon/src/store/takes-all.ts']);
  });
});
