import * as z from 'zod/mini';
import { changeSchema, jsonSchema } from '../changes/change.ts';
import { dateSchema, idSchema, markSchema } from '../records/scalars.ts';

/**
 * One edit from a page that is not a replica. Without `id` a new record is made, except for an `athlete`, whose id is
 * its own `athlete`. The daemon stamps it.
 */
const editSchema = z.object({
  kind: z.string(),
  athlete: z.optional(idSchema),
  id: z.optional(idSchema),
  fields: changeSchema.shape.fields,
});

/** `POST /v1/records`: all edits are stored, or none. */
export const editsRequestSchema = z.object({
  edits: z.array(editSchema).check(z.minLength(1), z.maxLength(1000)),
});
export const editsResponseSchema = z.object({
  records: z.array(z.object({ athlete: idSchema, id: idSchema })),
  seq: z.int(),
});

/** `GET /v1/records?athlete=&kind=&from=&to=`: whole records with their fields, without removed ones. */
export const recordsResponseSchema = z.object({
  records: z.array(
    z.object({ athlete: idSchema, id: idSchema, kind: z.string(), fields: z.record(z.string(), jsonSchema) }),
  ),
});

/** `POST /v1/weekly-call`: what the athlete decides on the call of `date`; `markG` goes with `changed`. */
export const decisionRequestSchema = z.object({
  athlete: idSchema,
  date: dateSchema,
  decision: z.enum(['accepted', 'changed', 'declined']),
  markG: z.optional(markSchema),
});

/** RFC 9457 problem details. */
export const problemSchema = z.object({
  type: z.string(),
  title: z.string(),
  status: z.int(),
  detail: z.optional(z.string()),
  /** Where in the request, as a JSON pointer, and what to do. */
  errors: z.optional(z.array(z.object({ pointer: z.string(), detail: z.string() }))),
});

export type Edit = z.infer<typeof editSchema>;
export type Problem = z.infer<typeof problemSchema>;
