import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import * as z from 'zod/mini';
import type { Daemon } from '../faults/daemon-process.ts';
import { runTool } from './tool.ts';

const ROOT = resolve(import.meta.dirname, '../..');

const extensionReport = z.object({
  errors: z.array(z.object({ code: z.string(), message: z.string(), file: z.optional(z.string()) })),
});

/** The extension as Firefox gets it: the linter is that of its add-on store. */
export async function lintExtension(): Promise<string[]> {
  const wxt = join(ROOT, 'node_modules/wxt/bin/wxt.mjs');
  execFileSync(process.execPath, [wxt, 'build', 'extension', '-b', 'firefox', '--mv3'], {
    cwd: ROOT,
    stdio: 'ignore',
  });
  const source = join(ROOT, 'extension/.output/firefox-mv3');
  const { stdout } = runTool('web-ext/bin/web-ext.js', [
    ...['lint', '--source-dir', source, '--output', 'json', '--no-config-discovery'],
  ]);
  const { errors } = extensionReport.parse(JSON.parse(stdout));
  return errors.map(({ code, message, file }) => `${file ?? ''} ${code}: ${message}`);
}

const apiReport = z.object({
  problems: z.array(z.object({ ruleId: z.string(), severity: z.string(), message: z.string() })),
});

/** The API's description as the daemon serves it. */
export async function lintApi({ daemon, folder }: { daemon: Daemon; folder: string }): Promise<string[]> {
  const { stdout } = runTool('@redocly/cli/bin/cli.js', [
    'lint',
    await saveApi(daemon, folder),
    '--format=json',
  ]);
  return apiReport
    .parse(JSON.parse(stdout))
    .problems.filter(({ severity }) => severity === 'error')
    .map(({ ruleId, message }) => `${ruleId}: ${message}`);
}

/** Writes the API's description into a file, whose path it gives. */
export async function saveApi({ url }: Pick<Daemon, 'url'>, folder: string): Promise<string> {
  const path = join(folder, 'openapi.json');
  writeFileSync(path, await (await fetch(`${url}/v1/openapi.json`)).text());
  return path;
}
