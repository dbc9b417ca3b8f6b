import * as z from 'zod/mini';
import { idSchema } from '../records/scalars.ts';
import { clockSchema } from './clock.ts';

export type Json = z.infer<ReturnType<typeof z.json>>;

/** What JSON.parse may give. One walk, because a schema that is asked for each value alone was most of the cost of a push. */
export const jsonSchema = z.custom<Json>(isJson, 'a JSON value');

/** One edit, the unit of sync: the fields it sets, all under one clock. Removal is the field `removed`. */
export const changeSchema = z.object({
  id: idSchema,
  athlete: idSchema,
  device: z.string().check(z.regex(/^[A-Za-z0-9]{1,40}$/)),
  clock: clockSchema,
  /** A kind this program does not know is carried, not dropped: a newer device may know it. */
  kind: z.string().check(z.regex(/^[a-z][a-z-]{0,39}$/)),
  record: idSchema,
  fields: z.record(z.string().check(z.minLength(1), z.maxLength(60)), jsonSchema),
});
export type Change = z.infer<typeof changeSchema>;

function isJson(value: unknown): boolean {
  if (value === null || typeof value === 'string' || typeof value === 'boolean') return true;
  if (typeof value === 'number') return Number.isFinite(value);
  if (Array.isArray(value)) return value.every(isJson);
  if (typeof value !== 'object') return false;
  const proto: unknown = Object.getPrototypeOf(value);
  return (proto === Object.prototype || proto === null) && Object.values(value).every(isJson);
}
