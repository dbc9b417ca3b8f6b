import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { expect, it } from 'vitest';

const root = resolve(import.meta.dirname, '../..');
const sources = ['daemon/src', 'daemon/dashboard', 'extension', 'docs']
  .flatMap((folder) => readdirSync(join(root, folder), { recursive: true, withFileTypes: true }))
  .filter((item) => item.isFile() && /\.(?:tsx?|md)$/.test(item.name))
  .map((item) => join(item.parentPath, item.name))
  .filter((path) => !/node_modules|\/\.wxt\/|\/\.output\/|\/dist\//.test(path));

const BARE =
  /(?<!npx )\bplatewright (?:start|demo|pair|devices|export|import|backup|restore|verify|service|doctor|COMMAND|--help)\b/;

it('a command is said as it can be typed after the install, which puts no platewright on the path', () => {
  expect(sources.length).toBeGreaterThan(200);
  const bare = sources.filter((path) => BARE.test(readFileSync(path, 'utf8')));
  expect(bare.map((path) => relative(root, path))).toEqual([]);
});
