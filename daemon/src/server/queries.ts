import { MAX_PULL } from '@platewright/core/protocol/sync.ts';
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

export const pullQuerySchema = z.object({
  since: z.optional(wholeNumber(0, Number.MAX_SAFE_INTEGER)),
  limit: z.optional(wholeNumber(1, MAX_PULL)),
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
