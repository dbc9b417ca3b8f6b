import * as z from 'zod/mini';
import { dateSchema, noteSchema } from './scalars.ts';

/** Types of pictures that are kept. */
export const pictureTypeSchema = z.enum(['image/jpeg', 'image/png', 'image/webp']);
export type PictureType = z.infer<typeof pictureTypeSchema>;

/** SHA-256 in hex: the name of a photo's file. */
const sha256Schema = z.string().check(z.regex(/^[0-9a-f]{64}$/, 'a SHA-256 in hex'));

/** A photo of the athlete on a date. The record holds its SHA-256; the picture itself is a file beside the store. */
export const photoSchema = z.object({
  date: dateSchema,
  sha256: sha256Schema,
  mediaType: pictureTypeSchema,
  note: z.optional(noteSchema),
  removed: z.optional(z.boolean()),
});

/** The first bytes of each type, in hex (WHATWG MIME Sniffing, section 6.1). */
const FIRST_BYTES: readonly (readonly [PictureType, RegExp])[] = [
  ['image/jpeg', /^ffd8ff/],
  ['image/png', /^89504e470d0a1a0a/],
  ['image/webp', /^52494646.{8}574542505650/],
];

/** The type of a picture, told by its first bytes; null when it is none that is kept. */
export function pictureType(content: Uint8Array): PictureType | null {
  const start = Array.from(content.subarray(0, 14), (byte) => byte.toString(16).padStart(2, '0')).join('');
  return FIRST_BYTES.find(([, pattern]) => pattern.test(start))?.[0] ?? null;
}
