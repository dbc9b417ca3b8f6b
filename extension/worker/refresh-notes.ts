import { readRecord } from '@platewright/core/changes/read.ts';
import { sessionSchema } from '@platewright/core/protocol/devices.ts';
import { dateSchema } from '@platewright/core/records/scalars.ts';
import { localDate } from '@platewright/core/season/local-date.ts';
import { Dexie } from 'dexie';
import * as z from 'zod/mini';
import { reader } from '../platform/replica.ts';
import { readHead } from '../replica/head.ts';
import { ask, type Line } from '../replica/http.ts';
import { inShort, larderName } from '../replica/larder.ts';
import { athleteOf, readNote } from '../replica/notes.ts';
import { recordById } from '../replica/season.ts';
import { database, type writeNote } from './replica.ts';

/** Of the week view only what the popup says in a line. */
const weekSchema = z.object({
  date: dateSchema,
  dueOn: dateSchema,
  call: z.nullable(
    z.object({ verdict: z.enum(['up', 'down', 'hold', 'not-enough']), carbohydrateG: z.number() }),
  ),
});

/**
 * After a sync: keeps what pages show beside the records, so that they open without the daemon and without delay. `note`
 * keeps a note, or throws when the browser is no longer paired as it was.
 */
export async function refreshNotes(line: Line, now: number, note: typeof writeNote): Promise<void> {
  const answer = await ask(line, 'session', sessionSchema);
  if (!answer.ok) return;
  const { demo, athletes } = answer.value;
  const session = { address: line.address, demo, athletes };
  await note('session', session);
  const chosen = await reader.read((reading) => readNote(reading, 'athlete'));
  const athlete = athleteOf(session, chosen);
  if (athlete === null) return;
  await keepLarder(athlete);
  await refreshWeek(line, athlete, now, note);
}

/** Keeps the larder in short when it was thrown away: in one transaction, so that no newer food is missed. */
async function keepLarder(athlete: string): Promise<void> {
  const { records, meta } = database;
  await database.transaction('rw', records, meta, async () => {
    const name = larderName(athlete);
    if ((await meta.get(name)) !== undefined) return;
    const rows = await records
      .where('[athlete+kind+date]')
      .between([athlete, 'food', Dexie.minKey], [athlete, 'food', Dexie.maxKey])
      .toArray();
    const foods = rows.flatMap((row) => readRecord('food', row) ?? []);
    await meta.put({ name, value: inShort(foods) });
  });
}

/** Asks for the weekly call only when the log or the date has moved: the daemon computes it from all records. */
async function refreshWeek(line: Line, athlete: string, now: number, note: typeof writeNote): Promise<void> {
  const here = await reader.read(async (reading) => ({
    record: await recordById(reading, athlete, 'athlete', athlete),
    head: await readHead(reading),
    known: await readNote(reading, 'week'),
  }));
  if (here === null || here.record === null) return;
  const date = localDate(now, here.record);
  const { seq } = here.head;
  if (here.known?.athlete === athlete && here.known.seq === seq && here.known.date === date) return;
  const answer = await ask(line, `views/week?athlete=${athlete}&date=${date}`, weekSchema);
  if (!answer.ok) return;
  const { call, dueOn } = answer.value;
  await note('week', {
    athlete,
    date,
    seq,
    verdict: call?.verdict ?? null,
    proposedG: call?.carbohydrateG ?? null,
    dueOn,
  });
}
