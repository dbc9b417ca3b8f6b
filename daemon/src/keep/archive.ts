import { hash } from 'node:crypto';
import { canonicalJson } from '@platewright/core/changes/canonical.ts';
import { type Change, changeSchema, type Json } from '@platewright/core/changes/change.ts';
import { type Clock, clockDevice, clockSchema, formatClock } from '@platewright/core/changes/clock.ts';
import type { StoredRecord } from '@platewright/core/changes/merge.ts';
import { idSchema } from '@platewright/core/records/scalars.ts';
import * as z from 'zod/mini';
import { whyImpossible } from '../store/refuse.ts';
import type { Stamp, Store } from '../store/store.ts';

/** First line of an archive. It says nothing of when or where, so that equal records give equal bytes. */
const headSchema = z.object({ archive: z.literal('platewright'), version: z.literal(1), records: z.int() });

/** Only what a device takes too: a record that it can't read would keep it from reading any. */
const recordSchema = z.object({
  athlete: idSchema,
  id: idSchema,
  kind: changeSchema.shape.kind,
  fields: changeSchema.shape.fields,
  clocks: z.record(z.string(), clockSchema),
});

/** Why an archive can't be taken in; `line` counts from 1. Nothing of it was stored. */
export class ArchiveTrouble extends Error {
  constructor(line: number, what: string) {
    super(`Line ${line} of the archive: ${what}. Nothing was imported.`);
    this.name = 'ArchiveTrouble';
  }
}

/** The store as lines of canonical JSON: a head, then a record a line with the clock of each field, removed ones too. */
export async function* archiveLines(store: Store): AsyncGenerator<string> {
  const records = await store.records({});
  yield `${canonicalJson({ archive: 'platewright', version: 1, records: records.length })}\n`;
  for (const record of records) yield `${canonicalJson({ ...record })}\n`;
}

/** Fills an empty store from an archive, whole or not at all. Returns how many records it took in. */
export async function importArchive(
  store: Store,
  lines: AsyncIterable<string>,
  stamp: Stamp,
): Promise<number> {
  const changes: Change[] = [];
  const seen = new Set<string>();
  let line = 0;
  let announced = 0;
  for await (const text of lines) {
    line += 1;
    // An editor may have put a mark before the first line.
    if (line === 1) announced = parse(headSchema, text.replace(/^\ufeff/, ''), line).records;
    else if (text.trim() !== '') {
      const record = parse(recordSchema, text, line);
      const key = `${record.athlete} ${record.id}`;
      if (seen.has(key)) throw new ArchiveTrouble(line, `the record ${record.id} stands twice`);
      seen.add(key);
      changes.push(...changesOf(record, line));
    }
  }
  if (line === 0 || seen.size !== announced) {
    throw new ArchiveTrouble(line, `it ends here, but ${announced} records were announced`);
  }
  await store.append(changes, stamp);
  return announced;
}

/** The changes that make a record: one for each clock in it. Their ids follow from it, so no change is made twice. */
function changesOf(record: StoredRecord, line: number): Change[] {
  const { athlete, id, kind, fields, clocks } = record;
  const byClock = new Map<Clock, Record<string, Json>>();
  for (const [field, value] of Object.entries(fields)) {
    const clock = Object.hasOwn(clocks, field) ? clocks[field] : undefined;
    if (clock === undefined) throw new ArchiveTrouble(line, `the field ${field} has no clock`);
    byClock.set(clock, { ...byClock.get(clock), [field]: value });
  }
  if (byClock.size === 0) byClock.set(formatClock(0, 0, 'import'), {});
  return [...byClock].map(([clock, set]) => {
    const digest = hash('sha256', canonicalJson([athlete, id, clock]), 'hex');
    const change = {
      id: `import-${digest.slice(0, 40)}`,
      athlete,
      device: clockDevice(clock),
      clock,
      kind,
      record: id,
      fields: set,
    };
    const reason = whyImpossible(change, null);
    if (reason !== null) throw new ArchiveTrouble(line, reason.replace(/\.$/, ''));
    return change;
  });
}

function parse<S extends z.ZodMiniType>(schema: S, text: string, line: number): z.output<S> {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    throw new ArchiveTrouble(line, 'it is not JSON');
  }
  const parsed = schema.safeParse(value);
  if (parsed.success) return parsed.data;
  const issue = parsed.error.issues[0];
  throw new ArchiveTrouble(
    line,
    `${(issue?.path ?? []).map(String).join('.') || 'it'} is not as it should be`,
  );
}
