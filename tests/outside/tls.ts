import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import * as z from 'zod/mini';
import { systemTool } from '../faults/system-tool.ts';

const report = z.array(z.object({ id: z.string(), severity: z.string(), finding: z.string() }));

/**
 * Left out: what a certificate that one made oneself can't have, a chain to an authority and a place that tells of its
 * end; and headers, because the tool asks with a Host that lacks the port, which gets no answer to look at.
 */
const NOT_OURS =
  /^cert_(chain_of_trust|ocspURL|crlDistributionPoints|revocation|trust|caIssuers)|^overall_grade|^grade_cap|^security_headers|^HSTS/;

/** The TLS port as others in the network see it. */
export async function checkTls({ lanPort, folder }: { lanPort: number; folder: string }): Promise<string[]> {
  const testssl = systemTool('testssl', 'testssl.sh');
  if (testssl === null) return [];
  const file = join(folder, 'testssl.json');
  spawnSync(testssl, ['--quiet', '--warnings', 'batch', '--jsonfile', file, `https://127.0.0.1:${lanPort}`], {
    stdio: 'ignore',
    timeout: 300_000,
  });
  return report
    .parse(JSON.parse(readFileSync(file, 'utf8')))
    .filter(({ severity }) => ['MEDIUM', 'HIGH', 'CRITICAL', 'FATAL'].includes(severity))
    .filter(({ id }) => !NOT_OURS.test(id))
    .map(({ id, severity, finding }) => `${id} ${severity}: ${finding}`);
}
