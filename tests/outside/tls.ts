import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import * as z from 'zod/mini';
import type { Daemon } from '../faults/daemon-process.ts';
import { systemTool } from '../faults/system-tool.ts';

const report = z.array(z.object({ id: z.string(), severity: z.string(), finding: z.string() }));

/** What a certificate that one made oneself can't have: a chain to an authority, and a place that tells of its end. */
const OF_AN_AUTHORITY =
  /^cert_(chain_of_trust|ocspURL|crlDistributionPoints|revocation|trust|caIssuers)|^overall_grade|^grade_cap/;

/** The TLS port as others in the network see it. */
export async function checkTls({ daemon, folder }: { daemon: Daemon; folder: string }): Promise<string[]> {
  const testssl = systemTool('testssl', 'testssl.sh');
  if (testssl === null) return [];
  const port = /https:\/\/[^\s/]+?:(\d+)/.exec([...daemon.lines, ...daemon.notes].join('\n'))?.[1];
  if (port === undefined) return ['the daemon does not say where it serves TLS'];
  const file = join(folder, 'testssl.json');
  spawnSync(testssl, ['--quiet', '--warnings', 'batch', '--jsonfile', file, `https://127.0.0.1:${port}`], {
    stdio: 'ignore',
    timeout: 300_000,
  });
  return report
    .parse(JSON.parse(readFileSync(file, 'utf8')))
    .filter(({ severity }) => ['MEDIUM', 'HIGH', 'CRITICAL', 'FATAL'].includes(severity))
    .filter(({ id }) => !OF_AN_AUTHORITY.test(id))
    .map(({ id, severity, finding }) => `${id} ${severity}: ${finding}`);
}
