import type * as z from 'zod/mini';
import { isKind, kinds } from '../records/kinds.ts';
import type { Change } from './change.ts';

/**
 * Why the fields of a change can't be accepted, or null when they can. Unknown fields pass: a newer device may know
 * them. A field that is missing passes too, because a change carries only what it sets.
 */
export function whyRefused(change: Pick<Change, 'kind' | 'fields'>): string | null {
  if (!isKind(change.kind)) {
    return `This daemon does not know records of kind “${change.kind}”. Update the daemon, then send again.`;
  }
  const shape: Record<string, z.ZodMiniType> = kinds[change.kind].shape;
  for (const [field, value] of Object.entries(change.fields)) {
    const schema = Object.hasOwn(shape, field) ? shape[field] : undefined;
    const parsed = schema?.safeParse(value === null ? undefined : value);
    if (parsed !== undefined && !parsed.success) {
      const detail = parsed.error.issues[0];
      const where = [change.kind, field, ...(detail?.path ?? [])].join('.');
      return `${where}: ${detail?.message ?? 'not valid'}.`;
    }
  }
  return null;
}
