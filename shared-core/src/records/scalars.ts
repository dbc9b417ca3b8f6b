import * as z from 'zod/mini';
import { mostMarkG } from './limits.ts';

/** An athlete's local date, `YYYY-MM-DD`, that exists in the calendar. */
export const dateSchema = z.iso.date();

/** A time of day, `HH:MM`, 24 hours. */
export const timeOfDaySchema = z
  .string()
  .check(z.regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'a time of day such as 06:30'));

/** The last instant of a JavaScript Date (ECMA-262, time values). */
const lastInstant = 8.64e15;

/** An instant in milliseconds since 1970-01-01T00:00Z. */
export const instantSchema = z.int().check(z.nonnegative(), z.maximum(lastInstant));

/** Ids are made by the device that creates the record: UUIDv7, or a name that two devices would both choose. */
export const idPattern = /^[A-Za-z0-9][A-Za-z0-9-]{0,63}$/;
export const idSchema = z.string().check(z.regex(idPattern, 'an id of letters, digits and hyphens'));

/** A carbohydrate mark, g a day. */
export const markSchema = z.number().check(z.positive(), z.maximum(mostMarkG));

/** Text that a person typed: trimmed, not empty, short enough to show. */
export const nameSchema = z.string().check(z.trim(), z.minLength(1), z.maxLength(120));
export const noteSchema = z.string().check(z.maxLength(2000));
