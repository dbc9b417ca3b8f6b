import { formatClock } from '@platewright/core/changes/clock.ts';
import { sessionSchema } from '@platewright/core/protocol/devices.ts';
import { type Daemon, pairExtension, startDaemon } from '../faults/daemon-process.ts';
import { temporaryFolder } from '../support/folder.ts';
import { freePort } from '../support/port.ts';
import { saveApi } from './lint.ts';
import { startTool } from './tool.ts';

/**
 * Sends what browsers send, to a demo season and through a proxy that holds each request and each answer against the
 * API's description. Gives what it found.
 */
export async function checkAnswers({ folder }: { folder: string }): Promise<string[]> {
  const home = temporaryFolder();
  const daemon = await startDaemon(home.path, ['demo', '--port', '0']);
  const port = await freePort();
  const args = ['proxy', await saveApi(daemon, folder), daemon.url, '--errors', '--port', String(port)];
  const proxy = await startTool('@stoplight/prism-cli/dist/index.js', args, /is listening on/);
  try {
    return await sendAll({ ...daemon, url: `http://127.0.0.1:${port}` });
  } finally {
    proxy.stop();
    await daemon.stop('SIGTERM');
    home.remove();
  }
}

async function sendAll(daemon: Daemon): Promise<string[]> {
  const faults: string[] = [];
  const headers = await pairExtension(daemon);
  const send = async (method: string, path: string, body?: unknown): Promise<string> => {
    const init = { method, headers, ...(body !== undefined && { body: JSON.stringify(body) }) };
    const answer = await fetch(`${daemon.url}${path}`, init);
    const text = await answer.text();
    const violations = answer.headers.get('sl-violations');
    if (!answer.ok || violations !== null)
      faults.push(`${method} ${path}: ${violations ?? text.slice(0, 400)}`);
    return text;
  };

  await send('GET', '/v1/health');
  await send('GET', '/v1/openapi.json');
  const session = sessionSchema.parse(JSON.parse(await send('GET', '/v1/session')));
  const athlete = session.athletes[0]?.id ?? '';
  const fields = { date: '2026-03-02', at: 1, kg: 80 };
  const change = {
    id: 'c1',
    athlete,
    device: 'phone',
    clock: formatClock(1, 0, 'phone'),
    kind: 'weigh-in',
    fields,
  };
  const refused = { ...change, id: 'c2', record: 'w2', fields: { kg: -1 } };
  await send('POST', '/v1/push', { changes: [{ ...change, record: 'w1' }, refused] });
  await send('POST', '/v1/records', { edits: [{ athlete, kind: 'weigh-in', fields }] });
  for (const path of [
    'pull?since=0&limit=50',
    'pull',
    'snapshot?limit=50',
    'devices',
    'records?kind=phase',
  ]) {
    await send('GET', `/v1/${path}`);
  }
  for (const view of ['day', 'week', 'body', 'lifts', 'plan', 'roster', 'larder', 'habits'])
    await send('GET', `/v1/views/${view}`);
  await send('POST', '/v1/devices/pairing', {});
  return faults;
}
