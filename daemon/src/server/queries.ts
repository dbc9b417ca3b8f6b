import { MAX_PULL, MAX_SNAPSHOT } from '@platewright/core/protocol/sync.ts';
import { dateSchema, idSchema } from '@platewright/core/records/scalars.ts';
import * as z from 'zod/mini';

/** A whole number as it stands in a query. */
function wholeNumber(low: number, high: number) {
  return z.pipe(
    z.string().check(z.regex(/^\d{1,15}$/, 'a whole number')),
    z.pipe(
      z.transform((text: string) => Number(text)),
      z.int().check(z.minimum(low), z.maximum(high)),
    ),
  );
}

const markSchema = z.string().check(z.regex(/^[a-z0-9]{0,128}$/, 'a mark from an earlier answer'));

export const pullQuerySchema = z.object({
  since: z.optional(wholeNumber(0, Number.MAX_SAFE_INTEGER)),
  mark: z.optional(markSchema),
  reached: z.optional(wholeNumber(0, Number.MAX_SAFE_INTEGER)),
  reachedMark: z.optional(markSchema),
  limit: z.optional(wholeNumber(1, MAX_PULL)),
});

/** Both of `afterAthlete` and `afterRecord`, or none. */
export const snapshotQuerySchema = z.object({
  afterAthlete: z.optional(idSchema),
  afterRecord: z.optional(idSchema),
  reached: z.optional(wholeNumber(0, Number.MAX_SAFE_INTEGER)),
  reachedMark: z.optional(markSchema),
  limit: z.optional(wholeNumber(1, MAX_SNAPSHOT)),
});

export const recordsQuerySchema = z.object({
  athlete: z.optional(idSchema),
  kind: z.optional(z.string()),
  from: z.optional(dateSchema),
  to: z.optional(dateSchema),
});

/** Without `athlete` the first one; without `date` that athlete's today. */
export const viewQuerySchema = z.object({
  athlete: z.optional(idSchema),
  date: z.optional(dateSchema),
});

/** Whose photo it is. */
export const photoQuerySchema = z.object({ athlete: idSchema });

/** Athletes with ids after this one. */
export const rosterQuerySchema = z.object({ after: z.optional(idSchema) });
