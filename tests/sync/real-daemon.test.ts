import type { Json } from '@platewright/core/changes/change.ts';
import { describe, expect, it } from 'vitest';
import { edit } from '../../extension/replica/edit.ts';
import { httpDaemon } from '../../extension/replica/http.ts';
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
  const paired = await at.extension();
  let cut = false;
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
    token: (paired.authorization ?? '').slice('Bearer '.length),
    fetch: async (path, init) => {
      const headers = Object.fromEntries(new Headers(init.headers));
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

  it('stop with a sentence when the device was removed', async () => {
    const phone = await device('phone', house());
    await phone.put('entry', 'e1', entryFields('2026-03-02'));
    const [known] = await house().store.devices();
    if (known !== undefined) await house().store.putDevice({ ...known, revokedAt: 1 });
    const end = await phone.sync();
    expect(end.state).toBe('unpaired');
    expect(end.detail).toMatch(/not paired/);
    expect(phone.replica.outbox()).toHaveLength(1);
  });
});
