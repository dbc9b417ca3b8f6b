import { pairingRequestSchema } from '@platewright/core/protocol/devices.ts';
import { isOwner } from '@platewright/core/protocol/rights.ts';
import { Hono } from 'hono';
import { ownersOnly, requireDevice } from '../auth.ts';
import { invalid, json } from '../body.ts';
import type { Deps, Env } from '../deps.ts';
import { issueCode } from '../issue-code.ts';
import { ProblemError } from '../problem.ts';
import { demandOwner } from '../rights.ts';
import { pairingCheck } from '../secrets.ts';

/** Who is paired; pair another, let one go. A device that is no owner's sees and lets go itself only. */
export function deviceRoutes(deps: Deps) {
  const { store, keys, now, key } = deps;
  return new Hono<Env>()
    .get('/devices', requireDevice(deps), async (c) => {
      const asking = c.get('device');
      const shown = (await store.devices()).filter(({ id }) => id === asking.id || isOwner(asking.rights));
      const devices = shown.map(({ id, name, kind, rights, pairedAt, lastSeenAt, revokedAt }) => ({
        ...{ id, name, kind, rights, pairedAt, lastSeenAt },
        check: pairingCheck(key, id),
        revoked: revokedAt !== null,
        current: id === asking.id,
      }));
      return c.json({ devices }, 200);
    })
    .delete('/devices/:id', requireDevice(deps), async (c) => {
      const asking = c.get('device');
      if (asking.id !== c.req.param('id')) demandOwner(asking.rights);
      const device = (await store.devices()).find(({ id }) => id === c.req.param('id'));
      if (device === undefined) {
        throw new ProblemError(404, 'no-such-device', {
          detail: 'There is no such device. Load the list again.',
        });
      }
      await keys.takeBack(device, asking.id);
      return c.body(null, 204);
    })
    .post('/devices/pairing', requireDevice(deps), ownersOnly, json(pairingRequestSchema), async (c) => {
      const { rights } = c.req.valid('json');
      const athlete = rights?.athlete ?? null;
      if (athlete !== null && (await store.record(athlete, athlete)) === null)
        throw invalid([{ pointer: '/rights/athlete', detail: 'there is no such athlete' }]);
      return c.json(await issueCode(store, now(), rights), 200);
    });
}
