import * as z from 'zod/mini';
import { idPattern, idSchema } from '../records/scalars.ts';
import { clockPattern, clockSchema } from './clock.ts';

export type Json = z.infer<ReturnType<typeof z.json>>;

/** What JSON.parse may give. One walk, because a schema that is asked for each value alone was most of the cost of a push. */
export const jsonSchema = z.custom<Json>((value) => isJson(value, Number.POSITIVE_INFINITY), 'a JSON value');

const devicePattern = /^[A-Za-z0-9]{1,40}$/;
const kindPattern = /^[a-z][a-z-]{0,39}$/;
const LONGEST_FIELD_NAME = 60;
/** Fields of records go three deep; the schema looks at what goes deeper than this. */
const PLAIN_DEPTH = 8;

/** One edit, the unit of sync: the fields it sets, all under one clock. Removal is the field `removed`. */
export const changeSchema = z.object({
  id: idSchema,
  athlete: idSchema,
  device: z.string().check(z.regex(devicePattern)),
  clock: clockSchema,
  /** A kind this program does not know is carried, not dropped: a newer device may know it. */
  kind: z.string().check(z.regex(kindPattern)),
  record: idSchema,
  fields: z.record(z.string().check(z.minLength(1), z.maxLength(LONGEST_FIELD_NAME)), jsonSchema),
});
export type Change = z.infer<typeof changeSchema>;

/**
 * Whether a value is a change just as the schema would give it back, and not deep. Asked before the schema, which takes four times as
 * long; the schema then says what is wrong with the others.
 */
export function isChange(value: unknown): value is Change {
  if (!isObject(value) || Object.keys(value).length !== 7) return false;
  const { id, athlete, device, clock, kind, record, fields } = value;
  return (
    [id, athlete, record].every((name) => matches(name, idPattern)) &&
    matches(device, devicePattern) &&
    matches(clock, clockPattern) &&
    matches(kind, kindPattern) &&
    isFields(fields)
  );
}

export function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function matches(value: unknown, pattern: RegExp): boolean {
  return typeof value === 'string' && pattern.test(value);
}

function isFields(value: unknown): boolean {
  if (!isObject(value) || !isJson(value, PLAIN_DEPTH)) return false;
  // The schema leaves out a field that is named as every object's model is.
  return Object.keys(value).every(
    (name) => name !== '' && name.length <= LONGEST_FIELD_NAME && name !== '__proto__',
  );
}

function isJson(value: unknown, depth: number): boolean {
  if (value === null || typeof value === 'string' || typeof value === 'boolean') return true;
  if (typeof value === 'number') return Number.isFinite(value);
  if (typeof value !== 'object' || depth === 0) return false;
  if (Array.isArray(value)) return value.every((item) => isJson(item, depth - 1));
  const proto: unknown = Object.getPrototypeOf(value);
  if (proto !== Object.prototype && proto !== null) return false;
  return Object.values(value).every((item) => isJson(item, depth - 1));
}
