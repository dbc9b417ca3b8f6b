import type * as z from 'zod/mini';
import { type FieldsOf, type Kind, kinds, type RecordOf } from '../records/kinds.ts';
import type { Json } from './change.ts';
import type { StoredRecord } from './merge.ts';

const schemas: { [K in Kind]: z.ZodMiniType<FieldsOf<K>> } = kinds;

/** The typed record, or null when it is removed or not (yet) whole; views leave those out. */
export function readRecord<K extends Kind>(kind: K, stored: StoredRecord): RecordOf<K> | null {
  if (stored.kind !== kind || stored.fields.removed === true) return null;
  const parsed = schemas[kind].safeParse(setFields(stored.fields));
  return parsed.success ? { ...parsed.data, id: stored.id, athlete: stored.athlete } : null;
}

/** The fields that hold something: one that is null was cleared. */
export function setFields(fields: Record<string, Json>): Record<string, Json> {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== null));
}
