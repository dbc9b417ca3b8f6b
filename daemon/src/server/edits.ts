import type { Change } from '@platewright/core/changes/change.ts';
import { type Clock, nextClock } from '@platewright/core/changes/clock.ts';
import { applyChange, type StoredRecord } from '@platewright/core/changes/merge.ts';
import { setFields } from '@platewright/core/changes/read.ts';
import type { Edit } from '@platewright/core/protocol/records.ts';
import { isKind, kinds } from '@platewright/core/records/kinds.ts';
import type * as z from 'zod/mini';
import { whyImpossible } from '../store/refuse.ts';
import type { Store, StoredDevice } from '../store/store.ts';
import { invalid, pointer } from './body.ts';
import { demandWrite } from './rights.ts';
import { newId } from './secrets.ts';

interface Fault {
  pointer: string;
  detail: string;
}

interface Maker {
  store: Store;
  /** ms since 1970. */
  now: number;
  device: Pick<StoredDevice, 'id' | 'rights'>;
}

/** Edits as changes, later than all that is stored. Throws ProblemError unless every record is whole afterwards. */
export async function toChanges(edits: readonly Edit[], maker: Maker): Promise<Change[]> {
  const records = new Map<string, StoredRecord>();
  const faults: Fault[] = [];
  const changes: Change[] = [];
  let clock = await maker.store.latestClock();
  for (const [index, edit] of edits.entries()) {
    const at = pointer(['edits', index]);
    clock = nextClock(clock, maker.now, maker.device.id);
    const change = toChange(edit, clock, maker);
    if (change === null) {
      faults.push({ pointer: `${at}/athlete`, detail: 'say whose record it is' });
      continue;
    }
    demandWrite(maker.device.rights, change.athlete);
    const key = `${change.athlete} ${change.record}`;
    const before = records.get(key) ?? (await maker.store.record(change.athlete, change.record));
    const impossible = whyImpossible(change, before);
    if (impossible !== null) {
      faults.push({ pointer: at, detail: impossible });
      continue;
    }
    const after = applyChange(before ?? undefined, change);
    faults.push(...missing(after, at));
    records.set(key, after);
    changes.push(change);
  }
  if (faults.length > 0) throw invalid(faults);
  return changes;
}

function toChange(edit: Edit, clock: Clock, { now, device }: Maker): Change | null {
  const isAthlete = edit.kind === 'athlete';
  const athlete = edit.athlete ?? (isAthlete ? (edit.id ?? newId(now)) : undefined);
  if (athlete === undefined) return null;
  const record = edit.id ?? (isAthlete ? athlete : newId(now));
  return { id: newId(now), athlete, device: device.id, clock, kind: edit.kind, record, fields: edit.fields };
}

/** What a record lacks to be whole; a removed one may lack anything. */
function missing(record: StoredRecord, at: string): Fault[] {
  if (!isKind(record.kind) || record.fields.removed === true) return [];
  const schema: z.ZodMiniType = kinds[record.kind];
  const parsed = schema.safeParse(setFields(record.fields));
  if (parsed.success) return [];
  return parsed.error.issues.map(({ path, message }) => ({
    pointer: `${at}/fields${pointer(path)}`,
    detail: message,
  }));
}
