import { clockSchema } from '@platewright/core/changes/clock.ts';
import * as z from 'zod/mini';
import type { Reading } from './reader.ts';
import { BLANK_HEAD, type Head } from './rows.ts';

/** Name of the meta row that says where the replica stands. */
export const HEAD = 'head';

const headSchema = z.object({
  device: z.nullable(z.string()),
  store: z.nullable(z.string()),
  seq: z.int(),
  seen: z.nullable(clockSchema),
  offsetMs: z.number(),
  recovery: z.nullable(
    z.object({ after: z.nullable(z.tuple([z.string(), z.string()])), refilled: z.boolean() }),
  ),
});

/** Where the replica stands, from the value of its meta row; a blank one when nothing readable is there. */
export function headOf(value: unknown): Head {
  const parsed = headSchema.safeParse(value);
  return parsed.success ? parsed.data : BLANK_HEAD;
}

export async function readHead(reading: Reading): Promise<Head> {
  return headOf(await reading.meta(HEAD));
}
