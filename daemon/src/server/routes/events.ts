import { Hono } from 'hono';
import { streamSSE } from 'hono/streaming';
import { requireDevice } from '../auth.ts';
import type { Deps, Env } from '../deps.ts';

/** Keeps proxies and sleeping pages from taking the line for dead, ms. */
const KEEP_ALIVE_MS = 20_000;
/** How soon a page asks again after the daemon went away, ms. */
const RETRY_MS = 500;

/** Tells a page that the log has grown, once at the start and then each time. */
export function eventRoutes(deps: Deps) {
  const { store, hub } = deps;
  return new Hono<Env>().get('/events', requireDevice(deps), (c) => {
    // Hono answers HEAD as GET and leaves the body, so a stream would wait for a reader for ever.
    if (c.req.method === 'HEAD') return c.body(null, 200, { 'content-type': 'text/event-stream' });
    const { tokenHash } = c.get('device');
    return streamSSE(c, async (stream) => {
      const gone = new AbortController();
      stream.onAbort(() => gone.abort());
      let told = -1;
      while (!hub.closed() && !gone.signal.aborted) {
        if ((await store.deviceByToken(tokenHash))?.revokedAt !== null) return;
        const seq = hub.seq();
        if (seq === told) await stream.write(': still here\n\n');
        else {
          await stream.writeSSE({
            event: 'changed',
            data: JSON.stringify({ seq }),
            id: String(seq),
            retry: RETRY_MS,
          });
        }
        told = seq;
        if (hub.seq() === told) await hub.sleep(KEEP_ALIVE_MS, gone.signal);
      }
    });
  });
}
