import { PROTOCOL } from '@platewright/core/protocol/version.ts';
import { Hono } from 'hono';
import { requireDevice } from '../auth.ts';
import type { Deps, Env } from '../deps.ts';
import { openApi } from '../openapi.ts';
import { athleteToRead } from '../rights.ts';

/** Whether the daemon is there, what it speaks, and who asks. */
export function systemRoutes(deps: Deps) {
  return new Hono<Env>()
    .get('/health', (c) => c.json({ ok: true, protocol: PROTOCOL, store: deps.store.id }, 200))
    .get('/openapi.json', (c) => c.json(openApi(), 200))
    .get('/session', requireDevice(deps), async (c) => {
      const { id, name, rights } = c.get('device');
      const only = athleteToRead(rights, undefined);
      const athletes = await deps.store.records({
        kind: 'athlete',
        ...(only === undefined ? {} : { athlete: only }),
      });
      const session = {
        device: id,
        name,
        store: deps.store.id,
        demo: (await deps.store.setting('demo')) !== null,
        rights,
        athletes: athletes
          .filter(({ fields }) => fields.removed !== true)
          .map((athlete) => ({ id: athlete.id, name: String(athlete.fields.name ?? '') })),
        now: deps.now(),
      };
      return c.json(session, 200);
    });
}
