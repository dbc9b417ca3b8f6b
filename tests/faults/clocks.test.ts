import type { Change } from '@platewright/core/changes/change.ts';
import { clockTime, formatClock, MAX_AHEAD_MS } from '@platewright/core/changes/clock.ts';
import { applyChange, type StoredRecord } from '@platewright/core/changes/merge.ts';
import { describe, expect, it } from 'vitest';
import { pairExtension } from './daemon-process.ts';
import { Load } from './load.ts';
import { useMachine } from './machine.ts';
import { systemTool } from './system-tool.ts';

const faketime = systemTool('faketime', 'faketime');
const YEAR_MS = 365 * 86_400_000;
const DEVICES = { slow: -YEAR_MS, right: 0, fast: YEAR_MS };

/** A weigh-in that all devices edit, each by its own clock, and one of each device's own. */
function editsOf(device: string, skewMs: number, round: number): Change[] {
  const clock = formatClock(Date.now() + skewMs, round, device);
  return ['shared', device].map((record) => ({
    ...{ id: `${device}-${record}-${round}`, athlete: 'ann', device, clock, kind: 'weigh-in', record },
    fields: { date: '2026-03-02', at: 1, kg: 80 + round, note: `${device} ${round}` },
  }));
}

function folded(changes: readonly Change[]): StoredRecord[] {
  const records = new Map<string, StoredRecord>();
  for (const change of changes) records.set(change.record, applyChange(records.get(change.record), change));
  return [...records.values()].sort((a, b) => (a.id < b.id ? -1 : 1));
}

describe.skipIf(faketime === null)('with clocks a year off', () => {
  const machine = useMachine();
  it.each(['-365d', '+0', '+365d'])(
    'a daemon at %s refuses nothing, and all devices come to the same',
    async (offset) => {
      const daemon = await machine().start(undefined, [faketime ?? '', '-f', offset]);
      const headers = await pairExtension(daemon);
      const load = new Load(daemon.url, headers);
      for (let round = 0; round < 5; round++) {
        for (const [device, skewMs] of Object.entries(DEVICES)) {
          const outcomes = await load.push(editsOf(device, skewMs, round));
          expect(outcomes.map(({ outcome }) => outcome)).toEqual(['stored', 'stored']);
        }
      }
      const { changes, now } = await (await fetch(`${daemon.url}/v1/pull?since=0`, { headers })).json();
      expect(changes).toHaveLength(load.sent.length);
      for (const { clock } of changes) expect(clockTime(clock)).toBeLessThanOrEqual(now + MAX_AHEAD_MS);

      const records = await (await fetch(`${daemon.url}/v1/records?kind=weigh-in`, { headers })).json();
      const fields = records.records.map(({ id, fields }: StoredRecord) => ({ id, fields }));
      for (const order of [changes, changes.toReversed()]) {
        expect(folded(order).map(({ id, fields }) => ({ id, fields }))).toEqual(fields);
      }
      // An edit made now comes after all of them, however fast the clock that made them.
      const body = JSON.stringify({
        edits: [{ athlete: 'ann', kind: 'weigh-in', id: 'shared', fields: { note: 'last' } }],
      });
      expect((await fetch(`${daemon.url}/v1/records`, { method: 'POST', headers, body })).status).toBe(200);
      const after = await (await fetch(`${daemon.url}/v1/records?kind=weigh-in`, { headers })).json();
      expect(after.records.find(({ id }: StoredRecord) => id === 'shared').fields.note).toBe('last');
    },
  );
});
