import * as z from 'zod/mini';
import { changeSchema } from '../changes/change.ts';
import { clockSchema } from '../changes/clock.ts';
import { idSchema, instantSchema } from '../records/scalars.ts';

export const MAX_PUSH = 500;
export const MAX_PULL = 2000;

/** `POST /v1/push`. Safe to repeat: a change is known by its id. */
export const pushRequestSchema = z.object({ changes: z.array(changeSchema).check(z.maxLength(MAX_PUSH)) });

/** What became of one pushed change. `clock` is the one it is stored under, which differs when it was far ahead. */
export const outcomeSchema = z.discriminatedUnion('outcome', [
  z.object({ id: idSchema, outcome: z.enum(['stored', 'known']), seq: z.int(), clock: clockSchema }),
  z.object({ id: idSchema, outcome: z.literal('rejected'), reason: z.string() }),
]);

/** `now` is the daemon's time: a device corrects its own clock by it. `store` names the store, new after a restore. */
const storeHead = { store: z.string(), protocol: z.int(), now: instantSchema };

export const pushResponseSchema = z.object({ ...storeHead, outcomes: z.array(outcomeSchema) });

/** `GET /v1/pull?since=SEQ&limit=N`: accepted changes after a sequence number, oldest first. */
export const pullResponseSchema = z.object({
  ...storeHead,
  changes: z.array(changeSchema),
  /** Sequence number of the last change here: the next `since`. */
  seq: z.int(),
  more: z.boolean(),
});

export type Outcome = z.infer<typeof outcomeSchema>;
export type PushResponse = z.infer<typeof pushResponseSchema>;
export type PullResponse = z.infer<typeof pullResponseSchema>;
