import { clockSchema } from '@platewright/core/changes/clock.ts';
import { rightsSchema } from '@platewright/core/protocol/devices.ts';
import * as z from 'zod/mini';
import type { Reading } from './reader.ts';
import { BLANK_HEAD, type Head } from './rows.ts';

/** Name of the meta row that says where the replica stands. */
export const HEAD = 'head';

const keySchema = z.tuple([z.string(), z.string()]);

/** What earlier versions did not write has a default: a head that can't be read would be taken for a new browser's. */
const headSchema = z.object({
  device: z.nullable(z.string()),
  store: z.nullable(z.string()),
  seq: z.int(),
  mark: z._default(z.string(), ''),
  seen: z.nullable(clockSchema),
  offsetMs: z.number(),
  recovery: z.nullable(z.object({ after: z.nullable(keySchema), refilled: z.boolean() })),
  reached: z._default(z.nullable(z.object({ seq: z.int(), mark: z.string() })), null),
  snapshot: z._default(z.nullable(z.object({ after: keySchema, seq: z.int(), mark: z.string() })), null),
  rights: z._default(rightsSchema, BLANK_HEAD.rights),
});

/** Where the replica stands, from the value of its meta row; a blank one when nothing readable is there. */
export function headOf(value: unknown): Head {
  const parsed = headSchema.safeParse(value);
  return parsed.success ? parsed.data : BLANK_HEAD;
}

export async function readHead(reading: Reading): Promise<Head> {
  return headOf(await reading.meta(HEAD));
}
