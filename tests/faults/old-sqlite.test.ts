import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, it } from 'vitest';
import { temporaryFolder } from './daemon-process.ts';

const MAIN = resolve(import.meta.dirname, '../../daemon/src/cli/main.ts');

/** The release before the WAL-reset fault was mended, and the one that mended it. */
it.each([
  ['3.51.2', 1],
  ['3.45.1', 1],
])('a Node that brings SQLite %s is refused before a store is touched', (version, status) => {
  const folder = temporaryFolder();
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
      folder.path,
    ],
    { encoding: 'utf8' },
  );
  expect([ended.status, ended.stdout]).toEqual([status, '']);
  expect(ended.stderr).toMatch(new RegExp(`SQLite ${version}.*3\\.51\\.3 or newer`));
  expect(existsSync(join(folder.path, 'store.sqlite'))).toBe(false);
  folder.remove();
});
