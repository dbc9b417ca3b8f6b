import type { Change } from '@platewright/core/changes/change.ts';
import { isKind, type Kind, kinds } from '@platewright/core/records/kinds.ts';
import * as z from 'zod/mini';

/** All fields of a kind at once, none of them needed; compiled when a kind is first seen. */
const compiled: { [K in Kind]?: z.ZodMiniType } = {};

/**
 * Whether the fields of a change are certainly good. One look at all takes a tenth of the time of a look at each, which
 * says what is wrong. Here and not in the core, because it makes code from schemas, which pages may not.
 */
export function takesAll({ kind, fields }: Pick<Change, 'kind' | 'fields'>): boolean {
  if (!isKind(kind)) return false;
  compiled[kind] ??= z.compile(z.partial<z.ZodMiniObject>(kinds[kind]));
  return compiled[kind].safeParse(fields).success;
}
