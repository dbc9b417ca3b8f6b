import { expect, it } from 'vitest';
import { createApp } from '../../daemon/src/server/app.ts';
import { createLog, faultFacts } from '../../daemon/src/server/log.ts';
import { weighIn } from '../store/contract.ts';
import { useHouse } from './house.ts';

const house = useHouse();

it('counts answers and changes as OpenMetrics, for this machine only', async () => {
  const headers = await house().extension();
  const change = weighIn('c1', { date: '2026-03-02', kg: 80, note: 'a private word' });
  await house().call('/v1/push', { headers, body: { changes: [change] } });
  await house().call('/v1/nothing', { headers });
  const answer = await house().call('/v1/metrics');
  expect(answer.status).toBe(200);
  expect(answer.headers.get('content-type')).toBe(
    'application/openmetrics-text; version=1.0.0; charset=utf-8',
  );
  const text = await answer.text();
  expect(text).toContain('platewright_requests_total{method="POST",status="2xx"} 2\n');
  expect(text).toContain('platewright_requests_total{method="GET",status="4xx"} 1\n');
  expect(text).toContain('platewright_changes_stored 1\n');
  expect(text).toContain('platewright_store_sound 1\n');
  expect(text).toMatch(/^platewright_answer_seconds_count 3$/m);
  expect(text.endsWith('# EOF\n')).toBe(true);
  for (const line of text.trim().split('\n')) {
    expect(line).toMatch(
      /^(# (TYPE|HELP) [a-z_]+ .+|# EOF|[a-z_]+(\{[a-z]+="[^"]*"(,[a-z]+="[^"]*")*\})? \d+(\.\d+)?(e-\d+)?)$/,
    );
  }
  for (const name of ['x-forwarded-for', 'x-real-ip', 'forwarded', 'via']) {
    expect((await house().call('/v1/metrics', { headers: { [name]: '10.0.0.9' } })).status).toBe(403);
  }
});

it('logs a line for each event by level, and nothing of what was sent', async () => {
  const lines: string[] = [];
  const logged = createApp({
    ...house().deps,
    log: createLog(
      'debug',
      (line) => lines.push(line),
      () => 0,
    ),
    seasons: { of: async () => Promise.reject(new Error('a private word')) },
    writer: { push: async () => [], edit: async () => [] },
  });
  const headers = { ...(await house().extension()), host: '127.0.0.1:8787' };
  await logged.request('http://127.0.0.1:8787/v1/records?kind=secret', { headers }, {});
  await logged.request('http://127.0.0.1:8787/v1/devices/secret', { method: 'DELETE', headers }, {});
  await logged.request('http://127.0.0.1:8787/v1/secret', { headers: { host: headers.host } }, {});
  await logged.request('http://127.0.0.1:8787/v1/session', { headers: { host: headers.host } }, {});
  expect(lines.map((line) => line.replace(/( device=[\w-]+)? ms=\d+$/, ''))).toEqual([
    '1970-01-01T00:00:00.000Z debug request method=GET route=/v1/records status=200',
    '1970-01-01T00:00:00.000Z debug request method=DELETE route=/v1/devices/:id status=404',
    expect.stringMatching(/debug request method=GET route=\S+ status=404$/),
    '1970-01-01T00:00:00.000Z warn request method=GET route=/v1/session status=401',
  ]);
  expect(lines.join('\n')).not.toMatch(/secret|\n\s/);

  const few: string[] = [];
  const log = createLog(
    'warn',
    (line) => few.push(line),
    () => 0,
  );
  log('info', 'started');
  log('error', 'fault', faultFacts(Object.assign(new TypeError('a private word'), { code: 'E_X' })));
  expect(few).toEqual([
    expect.stringMatching(/error fault kind=TypeError code=E_X at=metrics\.test\.ts:\d+/),
  ]);
});
