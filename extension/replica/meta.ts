import { clockSchema } from '@platewright/core/changes/clock.ts';
import * as z from 'zod/mini';
import type { Database } from './database.ts';
import { BLANK_HEAD, type Head } from './rows.ts';

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

/** Where the replica stands; a blank one when nothing (readable) is there. */
export async function readHead(database: Database): Promise<Head> {
  return (await readMeta(database, 'head', headSchema)) ?? BLANK_HEAD;
}

/** A named value, or null when it is not there or not what this version of the program writes. */
export async function readMeta<T>(
  database: Database,
  name: string,
  schema: z.ZodMiniType<T>,
): Promise<T | null> {
  const row = await database.meta.get(name);
  const parsed = schema.safeParse(row?.value);
  return parsed.success ? parsed.data : null;
}

/** Name of the row that holds an athlete's larder in short. */
export function larderName(athlete: string): string {
  return `larder ${athlete}`;
}
