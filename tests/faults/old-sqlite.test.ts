import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, it } from 'vitest';
import { useFolder } from '../support/use-folder.ts';

const MAIN = resolve(import.meta.dirname, '../../daemon/src/cli/main.ts');

const folder = useFolder();

/** The release before the WAL-reset fault was mended, and the one that mended it. */
it.each([
  ['3.51.2', 1],
  ['3.45.1', 1],
])('a Node that brings SQLite %s is refused before a store is touched', (version, status) => {
  const pretend = `Object.defineProperty(process.versions, 'sqlite', { value: '${version}' })`;
  const ended = spawnSync(
    process.execPath,
    [
      '--import',
      `data:text/javascript,${encodeURIComponent(pretend)}`,
      MAIN,
      'start',
      '--port',
      '0',
      '--data',
      folder(),
    ],
    { encoding: 'utf8' },
  );
  expect([ended.status, ended.stdout]).toEqual([status, '']);
  expect(ended.stderr).toMatch(new RegExp(`SQLite ${version}.*3\\.51\\.3 or newer`));
  expect(existsSync(join(folder(), 'store.sqlite'))).toBe(false);
});
