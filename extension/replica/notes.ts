import { dateSchema, idSchema } from '@platewright/core/records/scalars.ts';
import * as z from 'zod/mini';
import type { Reading } from './reader.ts';

/** What is kept beside the records so that a page can show it at once and without the daemon. */
const notes = {
  /** What the daemon said of itself when it was last met, and where. */
  session: z.object({
    address: z.string(),
    demo: z.boolean(),
    athletes: z.array(z.object({ id: idSchema, name: z.string() })),
  }),
  /** The weekly call as the daemon computed it, in short. `seq` is where the log stood. */
  week: z.object({
    athlete: idSchema,
    date: dateSchema,
    seq: z.int(),
    verdict: z.nullable(z.enum(['up', 'down', 'hold', 'not-enough'])),
    proposedG: z.nullable(z.number()),
    dueOn: dateSchema,
  }),
  /** How the last sync ended. */
  sync: z.object({
    state: z.enum(['done', 'offline', 'unpaired', 'refused']),
    detail: z.string(),
    at: z.number(),
  }),
  /**
   * The browser was paired with another store than the one whose records are here, and the person has not said yet what
   * becomes of them. `waiting` counts the changes that no daemon has. They may be sent where this browser may write
   * for everybody; an invented season takes and gives no records.
   */
  choice: z.object({ waiting: z.int(), device: z.string(), mayBeSent: z.boolean() }),
  /** The athlete that this browser logs for, when the store holds several. */
  athlete: idSchema,
} as const;

export type NoteName = keyof typeof notes;
export type Note<N extends NoteName> = z.infer<(typeof notes)[N]>;

const schemas: { [N in NoteName]: z.ZodMiniType<Note<N>> } = notes;

/** A note; null when there is none, or not one that this version of the program writes. */
export async function readNote<N extends NoteName>(reading: Reading, name: N): Promise<Note<N> | null> {
  const parsed = schemas[name].safeParse(await reading.meta(name));
  return parsed.success ? parsed.data : null;
}

/** The athlete that this browser logs for: the one chosen, or else the first of the store. */
export function athleteOf(session: Note<'session'> | null, chosen: string | null): string | null {
  const athletes = session?.athletes ?? [];
  return (athletes.find(({ id }) => id === chosen) ?? athletes[0])?.id ?? null;
}
