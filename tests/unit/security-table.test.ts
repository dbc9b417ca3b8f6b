import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

/** Requirements whose test is still to be written. It may only shrink. */
const OPEN = 0;

/** OWASP ASVS 5.0.0: for each section the levels of its requirements, in order; `1.5:123` is 1.5.1 at level 1, and so on. */
const STANDARD = `
  1.1:22 1.2:1111122223 1.3:112222222223 1.4:222 1.5:123
  2.1:122 2.2:112 2.3:12223 2.4:23
  3.1:3 3.2:113 3.3:12223 3.4:11222233 3.5:11122333 3.6:3 3.7:22333
  4.1:12233 4.2:23333 4.3:22 4.4:1222
  5.1:2 5.2:112333 5.3:113 5.4:222
  6.1:122 6.2:111111112222 6.3:11223333 6.4:112233 6.5:22222333 6.6:2223 6.7:33 6.8:2222
  7.1:222 7.2:1111 7.3:22 7.4:11222 7.5:223 7.6:22
  8.1:1233 8.2:1123 8.3:133 8.4:23
  9.1:111 9.2:1222
  10.1:22 10.2:223 10.3:22223 10.4:1111122222233333 10.5:22222 10.6:22 10.7:222
  11.1:2233 11.2:22233 11.3:11233 11.4:1222 11.5:23 11.6:23 11.7:33
  12.1:12233 12.2:11 12.3:22223
  13.1:2333 13.2:222223 13.3:2233 13.4:1222233
  14.1:22 14.2:12223333 14.3:122
  15.1:12233 15.2:12233 15.3:1222222 15.4:3333
  16.1:2 16.2:22222 16.3:2222 16.4:222 16.5:2223
  17.1:23 17.2:22223333 17.3:22`;

const root = resolve(import.meta.dirname, '../..');
const page = readFileSync(resolve(root, 'docs/security.md'), 'utf8');
const [before = '', tables = ''] = page.split('\n## Requirements\n');
const [, differ = ''] = before.split('\n## Where we differ\n');

interface Row {
  id: string;
  level: string;
  asks: string;
  met: string;
}

/** Every line that begins with a requirement's number, also one that is not written as it should be. */
const rows: Row[] = tables
  .split('\n')
  .filter((line) => /^\|\s*\d+\.\d+\.\d+/.test(line))
  .map((line) => {
    const [, id = '', level = '', asks = '', met = '', ...rest] = line.split('|').map((cell) => cell.trim());
    return { id, level, asks, met: rest.length === 1 ? met : '' };
  });

const required: [string, string][] = STANDARD.trim()
  .split(/\s+/)
  .flatMap((part) => {
    const [section = '', levels = ''] = part.split(':');
    return [...levels].map((level, i): [string, string] => [`${section}.${i + 1}`, level]);
  })
  .filter(([, level]) => level !== '3');

/** What stands behind `test:` and `by design:`; a row may name several. */
function evidence(word: string): [string, string][] {
  return rows.flatMap(({ id, met }) =>
    met
      .split(/; (?=(?:test|by design): )/)
      .filter((part) => part.startsWith(`${word}: `))
      .map((part): [string, string] => [id, part.slice(word.length + 2)]),
  );
}

/** Whether a file runs a test of this name: as it stands in the source, with the marks of `it.each`. */
function hasTest(path: string, name: string): boolean {
  const escaped = name.replace(/[\\^$.*+?()[\]{}|]/g, '\\$&');
  const source = readFileSync(resolve(root, path), 'utf8');
  return new RegExp(`[(\\s](['"\`])${escaped}\\1\\s*,`).test(source) && !/\.(?:skip|todo)\b/.test(source);
}

/** The anchors of a page's headings. */
function anchors(path: string): string[] {
  const headings = readFileSync(resolve(root, path), 'utf8').match(/^#+ .+$/gm) ?? [];
  return headings.map((line) => line.replace(/^#+ /, '').toLowerCase().replaceAll(' ', '-'));
}

describe('the table of security requirements', () => {
  it('has each requirement of level 1 and 2 once, at its level', () => {
    expect(required.filter(([, level]) => level === '1')).toHaveLength(70);
    expect(required.filter(([, level]) => level === '2')).toHaveLength(183);
    expect(rows.map(({ id, level }) => [id, level])).toEqual(required);
  });

  it('says in 5 to 12 words what each asks, and how it is met', () => {
    for (const { id, asks, met } of rows) {
      const words = asks.split(/\s+/).length;
      expect(words >= 5 && words <= 12, `${id}: ${asks}`).toBe(true);
      expect(met, id).toMatch(/^(?:test|by design|n\/a|open): \S/);
    }
  });

  it('names only tests that there are', () => {
    const named = evidence('test');
    expect(named.length).toBeGreaterThan(0);
    for (const [id, reference] of named) {
      const [path = '', name = ''] = reference.split(' › ');
      expect(path, id).toMatch(/^tests\//);
      expect(existsSync(resolve(root, path)), `${id}: there is no ${path}`).toBe(true);
      expect(hasTest(path, name), `${id}: ${path} has no test “${name}”`).toBe(true);
    }
  });

  it('names only files and headings that there are', () => {
    for (const [id, reference] of evidence('by design')) {
      const [place = ''] = reference.split(', ');
      const [path = '', anchor] = place.split('#');
      expect(existsSync(resolve(root, path)), `${id}: there is no ${path}`).toBe(true);
      if (anchor !== undefined) expect(anchors(path), `${id}: ${place}`).toContain(anchor);
      if (anchor === 'where-we-differ') expect(differ.match(/\d+\.\d+\.\d+/g)).toContain(id);
    }
  });

  it(`leaves ${OPEN} open, and no more`, () => {
    const open = rows.filter(({ met }) => met.startsWith('open: ')).map(({ id }) => id);
    expect(open).toHaveLength(OPEN);
  });
});
