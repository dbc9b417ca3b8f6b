import { PROTOCOL } from '@platewright/core/protocol/version.ts';
import { type Context, Hono } from 'hono';
import { DEMO_SETTING } from '../../store/setting-row.ts';
import { requireDevice } from '../auth.ts';
import { cookieName } from '../cookie.ts';
import type { Deps, Env } from '../deps.ts';
import { METRICS_TYPE, type Metrics } from '../metrics.ts';
import { ProblemError } from '../problem.ts';
import { athleteToRead } from '../rights.ts';

/** How this machine calls itself; who asks through a proxy asks for another name. */
const LOOPBACK_HOST = /^(127\.0\.0\.1|localhost|\[::1\])(:\d+)?$/i;
/** What proxies add. */
const FORWARDED = [
  'x-forwarded-for',
  'x-forwarded-host',
  'x-forwarded-proto',
  'x-real-ip',
  'forwarded',
  'via',
];

/** Whether the daemon is there and takes changes, what it speaks, and who asks. */
export function systemRoutes(deps: Deps, metrics: Metrics) {
  return new Hono<Env>()
    .get('/health', (c) => c.json({ ok: deps.store.trouble() === null, protocol: PROTOCOL }, 200))
    .get('/metrics', async (c) => {
      if (!isFromThisMachine(c)) throw notFromHere();
      const { store, hub, now } = deps;
      const changes = await store.lastSeq();
      const sound = store.trouble() === null;
      const text = metrics.text({ changes, sound, streams: hub.streams(), nowMs: now() });
      return c.body(text, 200, { 'content-type': METRICS_TYPE });
    })
    .get('/openapi.json', async (c) => {
      // Few ask for it, and it brings all that zod knows of JSON Schema.
      const { openApi } = await import('../openapi.ts');
      return c.json(openApi(cookieName(c)), 200);
    })
    .get('/session', requireDevice(deps), async (c) => {
      const { id, name, rights } = c.get('device');
      const athletes = await deps.athletes.of(athleteToRead(rights, undefined));
      const session = {
        device: id,
        name,
        store: deps.store.id,
        demo: (await deps.store.setting(DEMO_SETTING)) !== null,
        rights,
        athletes: athletes
          .filter(({ fields }) => fields.removed !== true)
          .map((athlete) => ({ id: athlete.id, name: String(athlete.fields.name ?? '') })),
        now: deps.now(),
      };
      if (athletes.length > 1) deps.roster.readAhead();
      return c.json(session, 200);
    });
}

/** Directly, not through a proxy on it, which passes on what others ask. */
function isFromThisMachine(c: Context<Env>): boolean {
  if (FORWARDED.some((name) => c.req.header(name) !== undefined)) return false;
  if (!LOOPBACK_HOST.test(c.env.site.host)) return false;
  const address = c.env.incoming?.socket.remoteAddress ?? '127.0.0.1';
  return /^(127\.|::1$|::ffff:127\.)/.test(address);
}

function notFromHere(): ProblemError {
  return new ProblemError(403, 'loopback-only', {
    detail: 'Metrics are for the machine on which the daemon runs. Ask there, at 127.0.0.1.',
  });
}
