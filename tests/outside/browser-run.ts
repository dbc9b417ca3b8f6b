import * as z from 'zod/mini';
import { mainJob } from '../browser/main-job.ts';
import { Dashboard, pageNames } from '../browser/pages/dashboard.ts';
import { startWorld } from '../browser/world.ts';
import { freePort } from '../support/port.ts';
import { saveApi } from './lint.ts';
import { answeringAgain, askAgain, type Recorded, recordingFront } from './recorded.ts';
import { startTool } from './tool.ts';

/** What the run can not have left out, when it was recorded as a whole. */
const ASKED_AT_LEAST = ['pair', 'session', 'push', 'pull', 'records', 'events', 'views/day', 'views/week'];

/**
 * Does the main job in a browser, opens every page of the dashboard, and holds each request to the API, and its answer,
 * against the API's description: a proxy can't stand between the two, because the daemon answers to its own address only
 * and streams, so they are recorded and pass through the proxy afterwards. Gives what it found.
 */
export async function checkBrowserRun({ folder }: { folder: string }): Promise<string[]> {
  const { recorded, api } = await runInBrowser(folder);
  const missed = ASKED_AT_LEAST.filter(
    (path) => !recorded.some((one) => one.path.split('?')[0] === `/v1/${path}` && one.answer.status === 200),
  );
  const again = await answeringAgain(recorded);
  const port = await freePort();
  const args = ['proxy', api, again.url, '--port', String(port), '--cors', 'false'];
  const proxy = await startTool('@stoplight/prism-cli/dist/index.js', args, /is listening on/);
  const faults = missed.map((path) => `/v1/${path} was not asked`);
  try {
    for (const [number, one] of recorded.entries()) {
      const fault = await violation(`http://127.0.0.1:${port}`, one, number);
      if (fault !== null) faults.push(`${one.method} ${one.path} ${one.answer.status}: ${fault}`);
    }
  } finally {
    proxy.stop();
    again.stop();
  }
  console.log(`  ${recorded.length} requests and answers of a browser`);
  return faults;
}

async function runInBrowser(folder: string): Promise<{ recorded: readonly Recorded[]; api: string }> {
  const front = await recordingFront();
  const world = await startWorld('start', { front: front.before });
  let api = '';
  try {
    api = await saveApi(world, folder);
    await mainJob(world);
    const dashboard = new Dashboard(await world.openDashboard());
    for (const name of pageNames) await dashboard.go(name);
  } finally {
    await world.close();
    front.stop();
  }
  return { recorded: front.recorded.filter(({ path }) => path.startsWith('/v1/')), api };
}

const violations = z.array(
  z.object({ location: z.array(z.string()), code: z.unknown(), message: z.string() }),
);

/**
 * What the proxy says against a request or its answer; null when it lets both pass as they were. A request that the
 * daemon refused too, with the code that the proxy has for it, is none: on that they agree.
 */
async function violation(proxy: string, one: Recorded, number: number): Promise<string | null> {
  const { status, headers, body } = await askAgain(proxy, one, number);
  if (status !== one.answer.status || !body.equals(one.answer.body)) {
    return `${status} ${body.toString('utf8').slice(0, 400)}`;
  }
  const said = violations.parse(JSON.parse(String(headers['sl-violations'] ?? '[]')));
  const left = said.filter(({ location, code }) => location[0] !== 'request' || code !== status);
  return left.length === 0 ? null : JSON.stringify(left);
}
