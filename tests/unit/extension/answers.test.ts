import { expect, it } from 'vitest';
import * as z from 'zod/mini';
import { ask } from '../../../extension/replica/http.ts';

const schema = z.object({ seq: z.int() });

function answered(body: BodyInit, status = 200) {
  return ask(
    { address: 'http://127.0.0.1:1', token: null, fetch: async () => new Response(body, { status }) },
    'pull',
    schema,
  );
}

function cutAfter(text: string): ReadableStream<Uint8Array> {
  const parts = [new TextEncoder().encode(text)];
  return new ReadableStream({
    pull(controller) {
      const part = parts.shift();
      if (part === undefined) controller.error(new TypeError('network error'));
      else controller.enqueue(part);
    },
  });
}

it('an answer that is cut on the way is no answer, whatever it began with', async () => {
  expect(await answered('{"seq":1}')).toEqual({ ok: true, value: { seq: 1 } });
  for (const status of [200, 503]) {
    expect(await answered(cutAfter('{"seq":'), status)).toMatchObject({ ok: false, why: 'offline' });
  }
});

it('an answer of another shape is refused, with what to update', async () => {
  for (const body of ['{"seq":', '{}', '<html>']) {
    expect(await answered(body)).toMatchObject({ why: 'refused', detail: expect.stringMatching(/Update/) });
  }
});
