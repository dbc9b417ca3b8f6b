import { mkdirSync, readFileSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, expect, it } from 'vitest';
import { type Build, buildStale } from '../../daemon/src/cli/build.ts';
import { useFolder } from '../support/use-folder.ts';

const LATER = new Date(Date.now() + 60_000);
const root = useFolder();

beforeEach(() => {
  mkdirSync(join(root(), 'pages/dist'), { recursive: true });
  mkdirSync(join(root(), 'pages/deep'));
  writeFileSync(join(root(), 'pages/deep/page.ts'), '');
  writeFileSync(
    join(root(), 'build.mjs'),
    "import { appendFileSync } from 'node:fs'; appendFileSync('pages/dist/out', 'x');",
  );
});

const build: Build = {
  name: 'pages',
  sources: ['pages', 'nothing'],
  result: 'pages/dist/out',
  command: ['build.mjs'],
};

it('builds what is missing or older than a source, and nothing else', async () => {
  const times = () => readFileSync(join(root(), 'pages/dist/out'), 'utf8').length;
  expect(await buildStale(root(), [build])).toEqual([]);
  expect(times()).toBe(1);
  await buildStale(root(), [build]);
  expect(times()).toBe(1);
  utimesSync(join(root(), 'pages/deep/page.ts'), LATER, LATER);
  await buildStale(root(), [build]);
  expect(times()).toBe(2);
});

it('names what could not be built', async () => {
  writeFileSync(join(root(), 'build.mjs'), 'process.exitCode = 3');
  expect(await buildStale(root(), [build])).toEqual(['pages']);
});
