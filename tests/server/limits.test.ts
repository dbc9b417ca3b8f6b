import { once } from 'node:events';
import { type ClientRequest, request } from 'node:http';
import { connect, type Socket } from 'node:net';
import { afterEach, expect, it, vi } from 'vitest';
import { ask, hangUp } from './ask.ts';
import { type Served, served } from './served.ts';

const QUICK = { headers: 300, whole: 600, checkedEvery: 50 };

let daemon: Served | null = null;
afterEach(async () => {
  hangUp();
  await daemon?.stop();
  daemon = null;
});

function open(port: number): Socket {
  return connect({ port, host: '127.0.0.1' }).on('error', () => undefined);
}

/** Waits until a connection has ended, with or without an error: who is cut off while it writes gets one. */
function closing(connection: Socket | ClientRequest): Promise<void> {
  return new Promise((resolve) => connection.once('close', () => resolve()));
}

async function cookieOf({ port, code }: Served): Promise<Record<string, string>> {
  const host = `127.0.0.1:${port}`;
  const said = { host, 'sec-fetch-site': 'same-origin' };
  const { headers } = await ask({
    ...{ port, method: 'POST', path: '/v1/pair' },
    headers: { ...said, origin: `http://${host}`, 'content-type': 'application/json' },
    body: JSON.stringify({ code: await code(), name: 'Page', kind: 'dashboard' }),
  });
  return { ...said, cookie: headers['set-cookie']?.[0]?.split(';')[0] ?? '' };
}

it('cuts off who sends headers or a body slowly, or nothing at all, and goes on serving', async () => {
  daemon = await served({ limits: QUICK });
  const { port } = daemon;
  const starts = [
    '',
    'GET /v1/hea',
    'GET /v1/health HTTP/1.1\r\nHost: x\r\nX-Slow: ',
    `POST /v1/pair HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nOrigin: http://127.0.0.1:${port}\r\nContent-Type: application/json\r\nContent-Length: 1000\r\n\r\n{`,
    `POST /v1/pair HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nOrigin: http://127.0.0.1:${port}\r\nContent-Type: application/json\r\nTransfer-Encoding: chunked\r\n\r\n1\r\n{\r\n`,
  ];
  const ends = starts.flatMap((start) =>
    Array.from({ length: 40 }, () => {
      const socket = open(port);
      socket.resume();
      socket.write(start);
      const drip = setInterval(() => socket.write('a'), 100);
      return closing(socket).finally(() => clearInterval(drip));
    }),
  );
  const asked = { port, path: '/v1/health', headers: { host: `127.0.0.1:${port}` } };
  expect((await ask(asked)).status).toBe(200);
  const complained = vi.spyOn(console, 'error');
  await Promise.all(ends);
  expect(complained).not.toHaveBeenCalled();
  expect((await ask(asked)).status).toBe(200);
});

it('takes no more of a huge body than it allows', async () => {
  daemon = await served();
  const { port } = daemon;
  const host = `127.0.0.1:${port}`;
  const common = { host, origin: `http://${host}`, 'content-type': 'application/json' };
  for (const framing of [{ 'content-length': String(2 ** 33) }, { 'transfer-encoding': 'chunked' }]) {
    const sending: ClientRequest = request({
      port,
      method: 'POST',
      path: '/v1/pair',
      headers: { ...common, ...framing },
    });
    sending.on('error', () => undefined);
    let sent = 0;
    let isAnswered = false;
    // After what came in was read, so that nothing is written into a connection whose answer waits to be read.
    const feed = () => {
      if (isAnswered || sending.destroyed) return;
      while (sending.write(Buffer.alloc(65536, 32))) sent += 65536;
      setImmediate(feed);
    };
    setImmediate(feed);
    sending.once('response', () => {
      isAnswered = true;
    });
    const [answer] = await once(sending, 'response');
    expect(answer.statusCode).toBe(413);
    sending.destroy();
    expect(sent).toBeLessThan(64 * 1024 * 1024);
  }
  expect((await ask({ port, path: '/v1/health', headers: { host } })).status).toBe(200);
});

/** Opens event streams, waits for the first event of each, and gives the way to hang up. */
async function listen(
  port: number,
  headers: Record<string, string>,
  count: number,
): Promise<ClientRequest[]> {
  const streams = Array.from({ length: count }, () =>
    request({ port, path: '/v1/events', headers, agent: false }).on('error', () => undefined),
  );
  const first = streams.map(async (stream) => {
    stream.end();
    const [response] = await once(stream, 'response');
    await once(response, 'data');
    response.on('error', () => undefined).resume();
  });
  await Promise.all(first);
  return streams;
}

const resources = (kind: string) => process.getActiveResourcesInfo().filter((name) => name === kind).length;

it('lets a thousand event streams come and go and keeps nothing of them', async () => {
  daemon = await served();
  const headers = await cookieOf(daemon);
  hangUp();
  const settled = async () => {
    for (let i = 0; i < 200 && resources('TCPSocketWrap') > 0; i++)
      await new Promise((next) => setTimeout(next, 10));
    return { sockets: resources('TCPSocketWrap'), timers: resources('Timeout') };
  };
  const before = await settled();
  for (let round = 0; round < 2; round++) {
    const streams = await listen(daemon.port, headers, 1000);
    expect(resources('TCPSocketWrap')).toBeGreaterThanOrEqual(2000);
    for (const stream of streams) stream.destroy();
    const after = await settled();
    expect(after.sockets).toBe(before.sockets);
    // Streams that wait hold a timer each: none may be left of those that went.
    expect(after.timers).toBeLessThan(before.timers + 20);
  }
});

it('stops within a second with streams open', async () => {
  daemon = await served({ lan: true });
  const streams = await listen(daemon.port, await cookieOf(daemon), 300);
  const ends = streams.map(closing);
  const late = new Promise((resolve) => setTimeout(resolve, 1000, 'late').unref());
  const { stop } = daemon;
  daemon = null;
  expect(await Promise.race([stop(), late])).toBeUndefined();
  await Promise.all(ends);
});
