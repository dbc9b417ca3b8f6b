import * as z from 'zod/mini';
import { type Change, changeSchema, isChange, isObject, jsonSchema } from '../changes/change.ts';
import { clockSchema } from '../changes/clock.ts';
import { idSchema, instantSchema } from '../records/scalars.ts';
import { rightsSchema } from './devices.ts';

export const MAX_PUSH = 1000;
export const MAX_PULL = 2000;
export const MAX_SNAPSHOT = 1000;

/** `POST /v1/push`. Safe to repeat: a change is known by its id. */
export const pushRequestSchema = z.object({ changes: z.array(changeSchema).check(z.maxLength(MAX_PUSH)) });

/** Whether a value is a push just as the schema would give it back, and not deep. */
export function isPushRequest(value: unknown): value is z.infer<typeof pushRequestSchema> {
  if (!isObject(value) || Object.keys(value).length !== 1) return false;
  const { changes } = value;
  return Array.isArray(changes) && changes.length <= MAX_PUSH && changes.every(isChange);
}

/** What became of one pushed change. `clock` is the one it is stored under, which differs when it was far ahead. */
const outcomeSchema = z.discriminatedUnion('outcome', [
  z.object({ id: idSchema, outcome: z.enum(['stored', 'known']), seq: z.int(), clock: clockSchema }),
  z.object({ id: idSchema, outcome: z.literal('rejected'), reason: z.string() }),
]);

/**
 * `now` is the daemon's time: a device corrects its own clock by it. `store` names the store, new after a restore.
 * `rights` are those of the device that asks.
 */
const storeHead = { store: z.string(), protocol: z.int(), now: instantSchema, rights: rightsSchema };

/** A place in the log: number of a change, and the daemon's checksum of all up to there. */
const place = { seq: z.int(), mark: z.string() };

/** `reached` is the place of the last of these changes; null when none was accepted. */
export const pushResponseSchema = z.object({
  ...storeHead,
  outcomes: z.array(outcomeSchema),
  reached: z.nullable(z.object(place)),
});

const pageSchema = z.object({
  ...storeHead,
  ...place,
  changes: z.array(changeSchema),
  more: z.boolean(),
});
const resetSchema = z.object({ ...storeHead, reset: z.literal('snapshot') });

/**
 * `GET /v1/pull?since=SEQ&mark=MARK&reached=SEQ&reachedMark=MARK&limit=N`: accepted changes after a place in the log,
 * oldest first; `seq` and `mark` are the next place. `reset` says that the log was folded after that place, or is not
 * the one that the device knows: it lacks that place, or the farthest one that the device heard of (`reached`). The
 * device then begins again, from 0 or else from a snapshot, and sends what the store lacks.
 */
export const pullResponseSchema = z.union([pageSchema, resetSchema]);

/** The same for the device that reads it: changes that are plainly in shape are not walked a second time. */
export const pulledSchema = z.union([
  z.extend(pageSchema, { changes: z.custom<Change[]>(areChanges) }),
  pullResponseSchema,
]);

function areChanges(value: unknown): boolean {
  return Array.isArray(value) && value.every(isChange);
}

/**
 * `GET /v1/snapshot?afterAthlete=ID&afterRecord=ID&reached=SEQ&reachedMark=MARK&limit=N`: records with their clocks, by
 * athlete and id. Pages may be of different moments; a pull from the place of the first page brings what was written
 * since. `reset` as in a pull: the pages before were of another log.
 */
export const snapshotResponseSchema = z.union([
  z.object({
    ...storeHead,
    ...place,
    records: z.array(
      z.object({
        athlete: idSchema,
        id: idSchema,
        kind: z.string(),
        fields: z.record(z.string(), jsonSchema),
        clocks: z.record(z.string(), clockSchema),
      }),
    ),
    more: z.boolean(),
  }),
  resetSchema,
]);

export type Place = z.infer<z.ZodMiniObject<typeof place>>;
export type Outcome = z.infer<typeof outcomeSchema>;
export type PushResponse = z.infer<typeof pushResponseSchema>;
export type PullResponse = z.infer<typeof pullResponseSchema>;
export type SnapshotResponse = z.infer<typeof snapshotResponseSchema>;
