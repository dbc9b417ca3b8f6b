import type { Rights } from '@platewright/core/protocol/devices.ts';
import { beforeEach, describe, expect, it } from 'vitest';
import { nameOf } from '../../daemon/src/keep/bytes.ts';
import { api } from '../../daemon/src/server/api.ts';
import { issueCode } from '../../daemon/src/server/issue-code.ts';
import { EXTENSION } from '../support/extension-origin.ts';
import { athleteFields, change, phaseFields } from './fields.ts';
import { FROM_PAGE, problemOf, useHouse } from './house.ts';
import { picture } from './pictures.ts';

const house = useHouse();
let made = 0;

type Headers = Record<string, string>;
type Route = (typeof api)[number];

/** Two athletes; a device held to one of them must never learn a word of the other. */
const OWN_ATHLETE = 'ann';
const OTHER = 'bob';
const CANARY = 'CANARY';
const PICTURE = picture('image/png', 'of an athlete');

const kinds = {
  owner: { athlete: null, access: 'write' },
  reader: { athlete: null, access: 'read' },
  'ann writer': { athlete: OWN_ATHLETE, access: 'write' },
  'ann reader': { athlete: OWN_ATHLETE, access: 'read' },
} as const satisfies Record<string, Rights>;
const shutOut = ['revoked', 'none'] as const;

async function device(rights: Rights, kind: 'extension' | 'dashboard'): Promise<Headers> {
  // One after the other, so that the list of devices has one order.
  house().now += 1;
  const { code } = await issueCode(house().store, house().now, rights);
  const headers = kind === 'extension' ? { origin: EXTENSION } : FROM_PAGE;
  const answer = await house().call('/v1/pair', { headers, body: { code, name: 'Test', kind } });
  expect(answer.status).toBe(200);
  const { token } = await answer.json();
  if (kind === 'extension') return { ...headers, authorization: `Bearer ${token}` };
  return { ...headers, cookie: (answer.headers.get('set-cookie') ?? '').split(';')[0] ?? '' };
}

async function devicesOf(kind: 'extension' | 'dashboard'): Promise<Record<string, Headers>> {
  const made: Record<string, Headers> = { none: kind === 'extension' ? { origin: EXTENSION } : FROM_PAGE };
  for (const [name, rights] of Object.entries(kinds)) made[name] = await device(rights, kind);
  made.revoked = await device(kinds.owner, kind);
  const last = (await house().store.devices()).at(-1);
  if (last !== undefined) await house().store.putDevice({ ...last, revokedAt: 1 });
  return made;
}

beforeEach(async () => {
  const stamp = (clock: string) => clock;
  const of = (athlete: string, name: string) => ({
    ...change(`a-${athlete}`, 'athlete', athlete, { ...athleteFields, name }),
    athlete,
  });
  const phase = (athlete: string) => ({
    ...change(`p-${athlete}`, 'phase', `phase-of-${athlete}`, phaseFields),
    athlete,
  });
  const changes = [of(OWN_ATHLETE, 'Ann'), of(OTHER, CANARY), phase(OWN_ATHLETE), phase(OTHER)];
  await house().store.append(changes, stamp);
});

/** What a request names: the athlete in it. Routes that name none are asked once. */
const NAMES_ATHLETE = new Set(['records', 'edit', 'decide', 'photo', 'putPhoto']);
/** These answer whoever is paired, with what that device may see or was refused. */
const SHOWS_OWN = new Set(['pull', 'snapshot', 'push', 'rosterView']);
const namesAthlete = ({ id, path }: Route) =>
  id === 'push' || (!SHOWS_OWN.has(id) && (NAMES_ATHLETE.has(id) || path.startsWith('/v1/views/')));

function request({ id, method, path, query }: Route, athlete: string, other: string) {
  made += 1;
  const bodies: Record<string, unknown> = {
    pair: { code: '0000-0000', name: 'Test', kind: 'extension' },
    push: { changes: [{ ...change(`new-${made}`, 'day', 'day-x', { date: '2026-03-02' }), athlete }] },
    edit: { edits: [{ kind: 'day', athlete, id: 'day-y', fields: { date: '2026-03-02' } }] },
    decide: { athlete, date: '2026-03-02', decision: 'accepted' },
    issueCode: {},
  };
  const asked = query !== undefined && Object.hasOwn(query.shape, 'athlete') ? `?athlete=${athlete}` : '';
  const body = id === 'putPhoto' ? PICTURE : bodies[id];
  const call = { method: method.toUpperCase(), ...(body === undefined ? {} : { body }) };
  return { path: path.replace('{id}', other).replace('{sha256}', nameOf(PICTURE)) + asked, call };
}

/** What an onlooker would expect, written down without looking at the daemon: who may do what. */
function allowed({ id, open }: Route, who: string, athlete: string): boolean {
  if (open) return true;
  if (who === 'revoked' || who === 'none') return false;
  if (who === 'owner') return true;
  if (id === 'revoke' || id === 'issueCode') return false;
  const writes = id === 'edit' || id === 'decide' || id === 'putPhoto';
  if (writes && who.endsWith('reader')) return false;
  const heldTo = who.startsWith('ann') ? OWN_ATHLETE : null;
  return heldTo === null || athlete === heldTo || SHOWS_OWN.has(id);
}

describe.each(['extension', 'dashboard'] as const)('over all routes, by %s', (kind) => {
  it('every kind of device gets what it may, and no word of an athlete beyond its rights', async () => {
    const devices = await devicesOf(kind);
    const [victim] = await house().store.devices();
    let asked = 0;
    for (const route of api) {
      for (const who of [...Object.keys(kinds), ...shutOut]) {
        for (const athlete of namesAthlete(route) ? [OWN_ATHLETE, OTHER, 'nobody'] : [OWN_ATHLETE]) {
          asked += 1;
          const { path, call } = request(route, athlete, who === 'owner' ? 'nobody' : (victim?.id ?? ''));
          const seq = await house().store.lastSeq();
          const answer = await house().call(path, { ...call, headers: devices[who] ?? {} });
          const where = `${who} ${route.id} ${athlete} → ${answer.status}`;
          const refusal = who === 'revoked' || who === 'none' ? 401 : 403;
          const right = allowed(route, who, athlete);
          if (route.id !== 'pair') expect(answer.status === refusal, where).toBe(!right);
          expect(answer.status, where).toBeLessThan(500);
          if (!right) expect(await house().store.lastSeq(), where).toBe(seq);
          const text = route.answer === 'events' ? '' : await answer.text();
          if (route.answer === 'events') await answer.body?.cancel();
          if (who.startsWith('ann') || who === 'none' || who === 'revoked')
            expect(text, where).not.toMatch(/CANARY|phase-of-bob/);
          if (route.id === 'push' && right) {
            const may = who === 'owner' || (who === 'ann writer' && athlete === OWN_ATHLETE);
            const [{ outcome, reason }] = JSON.parse(text).outcomes;
            expect([where, outcome]).toEqual([where, may ? 'stored' : 'rejected']);
            if (!may) {
              expect(reason, where).toMatch(/Pair it again/);
              expect(await house().store.lastSeq(), where).toBe(seq);
            }
          }
        }
      }
    }
    expect(asked).toBeGreaterThan(200);
  });
});

describe('rights', () => {
  it('of one athlete show that athlete alone, without being asked for it', async () => {
    const headers = await device({ athlete: OTHER, access: 'read' }, 'dashboard');
    const get = async (path: string) => (await house().call(path, { headers })).json();
    const session = await get('/v1/session');
    expect(session.athletes).toEqual([{ id: OTHER, name: CANARY }]);
    expect(session.rights).toEqual({ athlete: OTHER, access: 'read' });
    const { records } = await get('/v1/records');
    expect(new Set(records.map(({ athlete }: { athlete: string }) => athlete))).toEqual(new Set([OTHER]));
    expect((await get('/v1/views/plan')).athlete.name).toBe(CANARY);
    const { changes, seq } = await get('/v1/pull');
    expect(new Set(changes.map(({ athlete }: { athlete: string }) => athlete))).toEqual(new Set([OTHER]));
    expect(seq).toBe(await house().store.lastSeq());
  });

  it('do not let a mixed push or edit through in part beyond them', async () => {
    const headers = await device(kinds['ann writer'], 'extension');
    const day = (id: string, athlete: string) => ({
      ...change(id, 'day', id, { date: '2026-03-02' }),
      athlete,
    });
    const body = {
      changes: [day('x', OTHER), day('y', OWN_ATHLETE), day('z', OTHER), day('w', OWN_ATHLETE)],
    };
    const { outcomes } = await (await house().call('/v1/push', { headers, body })).json();
    expect(outcomes.map(({ id, outcome }: { id: string; outcome: string }) => `${id} ${outcome}`)).toEqual([
      'x rejected',
      'y stored',
      'z rejected',
      'w stored',
    ]);
    const edits = [OWN_ATHLETE, OTHER].map((athlete) => ({
      ...{ kind: 'day', athlete, id: 'both', fields: { date: '2026-03-02' } },
    }));
    const refused = await house().call('/v1/records', { headers, body: { edits } });
    expect(refused.status).toBe(403);
    expect((await problemOf(refused)).type).toMatch(/no-right$/);
    expect(await house().store.record(OWN_ATHLETE, 'both')).toBeNull();
  });

  it('of one athlete do not let a new athlete be set up', async () => {
    const headers = await device(kinds['ann writer'], 'dashboard');
    for (const named of [{}, { id: 'new' }, { athlete: 'new' }]) {
      const body = { edits: [{ kind: 'athlete', ...named, fields: athleteFields }] };
      expect((await house().call('/v1/records', { headers, body })).status).toBe(403);
    }
    expect(await house().store.records({ kind: 'athlete' })).toHaveLength(2);
  });

  it('go with the code: an owner gives them, for an athlete that there is', async () => {
    const headers = await device(kinds.owner, 'dashboard');
    const ask = (rights: object) => house().call('/v1/devices/pairing', { headers, body: { rights } });
    expect((await ask({ athlete: 'nobody', access: 'read' })).status).toBe(422);
    expect((await ask({ athlete: OTHER, access: 'all' })).status).toBe(422);
    const { code } = await (await ask({ athlete: OTHER, access: 'read' })).json();
    const paired = { code, name: 'Phone', kind: 'extension' };
    expect((await house().call('/v1/pair', { headers: { origin: EXTENSION }, body: paired })).status).toBe(
      200,
    );
    const { devices } = await (await house().call('/v1/devices', { headers })).json();
    expect(devices).toContainEqual(
      expect.objectContaining({ name: 'Phone', rights: { athlete: OTHER, access: 'read' } }),
    );
  });

  it('come from the code alone: a device can not choose its own', async () => {
    const { code } = await issueCode(house().store, house().now, kinds['ann reader']);
    const more = { rights: kinds.owner, access: 'write', athlete: null, id: 'chosen', tokenHash: 'chosen' };
    const body = { code, name: 'Greedy', kind: 'extension', ...more };
    const answer = await house().call('/v1/pair', { headers: { origin: EXTENSION }, body });
    expect(answer.status).toBe(200);
    const [device] = await house().store.devices();
    expect(device).toMatchObject({ name: 'Greedy', rights: kinds['ann reader'] });
    expect(device?.id).not.toBe('chosen');
  });

  it('let any device see and let go itself, and no other', async () => {
    const owner = await device(kinds.owner, 'dashboard');
    const headers = await device(kinds['ann reader'], 'extension');
    const { devices } = await (await house().call('/v1/devices', { headers })).json();
    expect(devices).toHaveLength(1);
    expect(devices[0]).toMatchObject({ current: true, rights: kinds['ann reader'] });
    const others = (await house().store.devices()).filter(({ id }) => id !== devices[0].id);
    for (const id of [...others.map((other) => other.id), 'nobody'])
      expect((await house().call(`/v1/devices/${id}`, { method: 'DELETE', headers })).status).toBe(403);
    expect((await house().call(`/v1/devices/${devices[0].id}`, { method: 'DELETE', headers })).status).toBe(
      204,
    );
    expect((await house().call('/v1/session', { headers })).status).toBe(401);
    expect((await house().call('/v1/session', { headers: owner })).status).toBe(200);
  });
});
