import type { Json } from '@platewright/core/changes/change.ts';
import { pullResponseSchema } from '@platewright/core/protocol/sync.ts';
import { PROTOCOL, PROTOCOL_HEADER } from '@platewright/core/protocol/version.ts';
import { describe, expect, it } from 'vitest';
import { edit } from '../../extension/replica/edit.ts';
import { ask, httpDaemon } from '../../extension/replica/http.ts';
import { toRecord } from '../../extension/replica/rows.ts';
import { sync } from '../../extension/replica/sync.ts';
import { ATHLETE, athleteFields, entryFields } from '../server/fields.ts';
import { type House, useHouse } from '../server/house.ts';
import { MemoryReplica } from './memory-replica.ts';

const house = useHouse();

/** A device whose requests go through the real routes into a real store. */
async function device(name: string, at: House, skewMs = 0) {
  const replica = new MemoryReplica();
  await replica.transact(async (tx) => tx.putHead({ ...(await tx.head()), device: name }));
  let paired = await at.extension();
  let cut = false;
  let spoken: string | null = null;
  let ids = 0;
  const source = {
    now: () => at.now + skewMs,
    newId: () => {
      ids += 1;
      return `${name}-${ids}`;
    },
  };
  const daemon = httpDaemon({
    address: '',
    token: null,
    fetch: async (path, init) => {
      const headers = Object.fromEntries(new Headers(init.headers));
      if (spoken !== null) headers[PROTOCOL_HEADER] = spoken;
      const body = typeof init.body === 'string' ? { body: init.body } : {};
      const answer = await at.call(path, { headers: { ...headers, ...paired }, ...body });
      if (cut) throw new TypeError('the answer is lost');
      return answer;
    },
  });
  return {
    replica,
    put: (kind: string, record: string, fields: Record<string, unknown>) => {
      const plain: Record<string, Json> = JSON.parse(JSON.stringify(fields));
      return edit(replica, source, [{ athlete: ATHLETE, kind, record, fields: plain }]);
    },
    sync: () => sync({ ...source, replica, daemon }),
    /** Pairs it once more, as another device. */
    async pairAgain() {
      paired = await at.extension();
      await replica.transact(async (tx) => tx.putHead({ ...(await tx.head()), device: `${name}2` }));
    },
    /** As an extension of another version would. */
    speak: (version: string | null) => {
      spoken = version;
    },
    cut: (lost: boolean) => {
      cut = lost;
    },
  };
}

describe('replica and real daemon', () => {
  it('come to the same records, whatever the clocks say and though answers get lost', async () => {
    const year = 365 * 86_400_000;
    const phone = await device('phone', house(), year);
    const desk = await device('desk', house(), -year);
    await phone.put('athlete', ATHLETE, athleteFields);
    await phone.put('entry', 'e1', entryFields('2026-03-02'));
    phone.cut(true);
    expect(await phone.sync()).toMatchObject({ state: 'offline' });
    phone.cut(false);
    expect(await phone.sync()).toEqual({ state: 'done', detail: '' });
    await desk.sync();
    await desk.put('entry', 'e1', { grams: 42 });
    await desk.sync();
    await phone.sync();
    const stored = await house().store.records({ athlete: ATHLETE });
    const inOrder = (rows: readonly { id: string }[]) => [...rows].sort((a, b) => (a.id < b.id ? -1 : 1));
    for (const { replica } of [phone, desk]) {
      expect(replica.outbox()).toEqual([]);
      expect(inOrder(replica.rows().map(toRecord))).toEqual(inOrder(stored));
    }
    expect(stored.find(({ id }) => id === 'e1')?.fields.grams).toBe(42);
  });

  it('keep what was refused with its reason, and send the rest', async () => {
    const phone = await device('phone', house());
    await phone.put('athlete', ATHLETE, athleteFields);
    await phone.put('entry', 'e1', entryFields('2026-03-02'));
    await phone.sync();
    await phone.put('weigh-in', 'e1', { date: '2026-03-02', kg: 70, at: 1 });
    await phone.put('entry', 'e2', entryFields('2026-03-03'));
    expect(await phone.sync()).toMatchObject({ state: 'done' });
    expect(phone.replica.outbox()).toMatchObject([
      { state: 'rejected', reason: expect.stringMatching(/is of kind “entry”/) },
    ]);
    expect(await house().store.record(ATHLETE, 'e2')).not.toBeNull();
  });

  it('stop with a sentence when the device was removed, keep what waits, and send it once it is paired again', async () => {
    const phone = await device('phone', house());
    await phone.put('entry', 'e1', entryFields('2026-03-02'));
    const [known] = await house().store.devices();
    if (known !== undefined) await house().store.putDevice({ ...known, revokedAt: 1 });
    const end = await phone.sync();
    expect(end.state).toBe('unpaired');
    expect(end.detail).toMatch(/not paired/);
    expect(phone.replica.outbox()).toHaveLength(1);
    await phone.pairAgain();
    await phone.put('entry', 'e2', entryFields('2026-03-02'));
    expect(await phone.sync()).toMatchObject({ state: 'done' });
    expect((await house().store.records({ kind: 'entry' })).map(({ id }) => id)).toEqual(['e1', 'e2']);
  });

  it('give a new device a snapshot when the log was folded, and an old one all that it missed', async () => {
    const [phone, tablet] = [await device('phone', house()), await device('tablet', house())];
    await tablet.put('entry', 'e0', entryFields('2026-03-01'));
    await tablet.sync();
    for (let i = 1; i <= 5; i += 1) await phone.put('entry', `e${i}`, entryFields('2026-03-02'));
    await phone.sync();
    await house().store.fold(5);
    await tablet.put('entry', 'e9', entryFields('2026-03-03'));
    const desk = await device('desk', house());
    for (const one of [tablet, desk, phone]) expect(await one.sync()).toMatchObject({ state: 'done' });
    const stored = await house().store.records({});
    for (const { replica } of [phone, tablet, desk]) {
      expect(new Set(replica.rows().map(toRecord))).toEqual(new Set(stored));
      expect(replica.outbox()).toEqual([]);
    }
  });
});

describe('an extension and a daemon of different versions', () => {
  it.each([
    ['0', /too old.*Update the extension.*kept/],
    [`${PROTOCOL + 1}`, /newer than the daemon.*Update the daemon.*kept/],
  ])('are told which one to update when the extension speaks %s', async (version, sentence) => {
    const phone = await device('phone', house());
    await phone.put('entry', 'e1', entryFields('2026-03-02'));
    phone.speak(version);
    const end = await phone.sync();
    expect(end.state).toBe('refused');
    expect(end.detail).toMatch(sentence);
    expect(phone.replica.outbox()).toMatchObject([{ state: 'waiting' }]);
    phone.speak(null);
    expect(await phone.sync()).toMatchObject({ state: 'done' });
  });

  it('are told so when an answer has another shape', async () => {
    const fetch = async () => Response.json({ changes: [], seq: 0 });
    const answer = await ask({ address: '', token: null, fetch }, 'pull', pullResponseSchema);
    expect(answer).toMatchObject({ ok: false, detail: expect.stringMatching(/Update daemon and extension/) });
  });
});

describe('a browser that may only look', () => {
  it('is told so when it edits, and holds what the store holds after that was set back', async () => {
    const owner = await device('phone', house());
    await owner.put('entry', 'e1', entryFields('2026-03-02'));
    await owner.sync();
    const before = (await house().store.devices()).map(({ id }) => id);
    const partner = await device('tablet', house());
    const known = (await house().store.devices()).find(({ id }) => !before.includes(id));
    if (known !== undefined) {
      await house().store.putDevice({ ...known, rights: { athlete: ATHLETE, access: 'read' } });
    }
    await partner.sync();
    await expect(partner.put('entry', 'e2', entryFields('2026-03-02'))).rejects.toThrow(
      'may look, not write',
    );
    await partner.replica.transact(async (tx) => tx.putHead({ ...(await tx.head()), store: 'another' }));
    await partner.replica.transact(async (tx) => {
      const [row] = await tx.records([[ATHLETE, 'e1']]);
      if (row !== undefined) await tx.putRecords([{ ...row, id: 'gone' }]);
    });
    expect(await partner.sync()).toMatchObject({ state: 'done' });
    expect(partner.replica.rows().map(({ id }) => id)).toEqual(['e1']);
    expect(partner.replica.outbox()).toEqual([]);
  });
});
