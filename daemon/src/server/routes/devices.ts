import { Hono } from 'hono';
import { requireDevice } from '../auth.ts';
import type { Deps, Env } from '../deps.ts';
import { issueCode } from '../issue-code.ts';
import { ProblemError } from '../problem.ts';

/** Who is paired; pair another, let one go. */
export function deviceRoutes(deps: Deps) {
  const { store, hub, now } = deps;
  return new Hono<Env>()
    .get('/devices', requireDevice(deps), async (c) => {
      const devices = (await store.devices()).map(({ id, name, kind, pairedAt, lastSeenAt, revokedAt }) => ({
        ...{ id, name, kind, pairedAt, lastSeenAt },
        revoked: revokedAt !== null,
        current: id === c.get('device').id,
      }));
      return c.json({ devices }, 200);
    })
    .delete('/devices/:id', requireDevice(deps), async (c) => {
      const device = (await store.devices()).find(({ id }) => id === c.req.param('id'));
      if (device === undefined) {
        throw new ProblemError(404, 'no-such-device', {
          detail: 'There is no such device. Load the list again.',
        });
      }
      await store.putDevice({ ...device, revokedAt: device.revokedAt ?? now() });
      hub.wake();
      return c.body(null, 204);
    })
    .post('/devices/pairing', requireDevice(deps), async (c) => c.json(await issueCode(store, now()), 200));
}
