import { setTimeout } from 'node:timers/promises';
import { expect, it } from 'vitest';
import { ATHLETE } from './fields.ts';
import { useHouse } from './house.ts';

const house = useHouse();

async function listen(headers: Record<string, string>) {
  const answer = await house().call('/v1/events', { headers });
  expect(answer.status).toBe(200);
  expect(answer.headers.get('content-type')).toMatch(/^text\/event-stream/);
  const reader = answer.body?.pipeThrough(new TextDecoderStream()).getReader();
  if (reader === undefined) throw new Error('no stream');
  return reader;
}

async function edit(headers: Record<string, string>, id: string): Promise<void> {
  const edits = [{ kind: 'day', athlete: ATHLETE, id, fields: { date: '2026-03-02' } }];
  expect((await house().call('/v1/records', { headers, body: { edits } })).status).toBe(200);
}

it('tells where the log stands, and each time it grows', async () => {
  const headers = await house().dashboard();
  const reader = await listen(headers);
  expect((await reader.read()).value).toContain('event: changed\ndata: {"seq":0}\nid: 0\n');
  await edit(headers, 'a');
  expect((await reader.read()).value).toContain('data: {"seq":1}');
  await edit(headers, 'b');
  expect((await reader.read()).value).toContain('data: {"seq":2}');
  await reader.cancel();
});

it('ends when the daemon stops', async () => {
  const reader = await listen(await house().dashboard());
  await reader.read();
  house().hub.close();
  expect((await reader.read()).done).toBe(true);
});

it('ends for a device that is let go', async () => {
  const gone = await house().dashboard();
  const [device] = await house().store.devices();
  const reader = await listen(gone);
  await reader.read();
  const headers = await house().dashboard();
  await house().call(`/v1/devices/${device?.id}`, { method: 'DELETE', headers });
  expect((await reader.read()).done).toBe(true);
});

it('leaves no stream open behind a HEAD', async () => {
  const headers = await house().dashboard();
  const answer = await house().call('/v1/events', { method: 'HEAD', headers });
  expect([answer.status, answer.headers.get('content-type')]).toEqual([200, 'text/event-stream']);
  expect(answer.body).toBeNull();
  // A stream's first line is written after a few turns.
  await setTimeout(0);
  expect(house().hub.streams()).toBe(0);
});

it('is for paired devices only', async () => {
  expect((await house().call('/v1/events')).status).toBe(401);
});
