import * as z from 'zod/mini';
import { idSchema } from '../records/scalars.ts';
import { clockSchema } from './clock.ts';

/** One edit, the unit of sync: the fields it sets, all under one clock. Removal is the field `removed`. */
export const changeSchema = z.object({
  id: idSchema,
  athlete: idSchema,
  device: z.string().check(z.regex(/^[A-Za-z0-9]{1,40}$/)),
  clock: clockSchema,
  /** A kind this program does not know is carried, not dropped: a newer device may know it. */
  kind: z.string().check(z.regex(/^[a-z][a-z-]{0,39}$/)),
  record: idSchema,
  fields: z.record(z.string().check(z.minLength(1), z.maxLength(60)), z.json()),
});
export type Change = z.infer<typeof changeSchema>;
export type Json = z.infer<ReturnType<typeof z.json>>;
