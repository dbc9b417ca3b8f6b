import type { Json } from '@platewright/core/changes/change.ts';
import { validator } from 'hono/validator';
import type * as z from 'zod/mini';
import { ProblemError } from './problem.ts';

/** Deeper than any record, and shallow enough for a parser that calls itself. */
const MAX_DEPTH = 32;

/**
 * The body, checked by a schema. A simple cross-site form can't send this content type. What `isPlain` says is not deep,
 * and just as the schema would give it back, needs no second look.
 */
export function json<S extends z.ZodMiniType>(
  schema: S,
  isPlain: (value: unknown) => value is z.output<S> = isNever,
) {
  return validator('json', (value: Json, c): z.output<S> => {
    if (!/^application\/json *(;|$)/i.test(c.req.header('content-type') ?? '')) {
      throw new ProblemError(415, 'not-json', { detail: 'Send the body as application/json.' });
    }
    if (isPlain(value)) return value;
    if (isDeeperThan(value, MAX_DEPTH)) throw invalid([{ pointer: '', detail: 'nested too deeply' }]);
    return check(schema, value);
  });
}

/** The query, checked by a schema; every parameter may be given once. */
export function query<S extends z.ZodMiniType>(schema: S) {
  return validator('query', (value): z.output<S> => check(schema, value));
}

export function invalid(errors: { pointer: string; detail: string }[]): ProblemError {
  const { pointer: at, detail: what } = errors[0] ?? { pointer: '', detail: 'not valid' };
  // The whole has an empty pointer, which a sentence can't begin with.
  const detail = `${at || 'The request'}: ${what}. Mend it and send again.`;
  return new ProblemError(422, 'invalid', { detail, errors });
}

/** JSON pointer (RFC 6901) of a path. */
export function pointer(path: readonly PropertyKey[]): string {
  return path.map((step) => `/${String(step).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('');
}

function isNever(_value: unknown): _value is never {
  return false;
}

function check<S extends z.ZodMiniType>(schema: S, value: unknown): z.output<S> {
  const parsed = schema.safeParse(value);
  if (parsed.success) return parsed.data;
  throw invalid(
    parsed.error.issues
      .slice(0, 20)
      .map(({ path, message }) => ({ pointer: pointer(path), detail: message })),
  );
}

function isDeeperThan(value: Json, depth: number): boolean {
  if (value === null || typeof value !== 'object') return false;
  const items = Object.values(value);
  return depth === 0 ? items.length > 0 : items.some((item) => isDeeperThan(item, depth - 1));
}
