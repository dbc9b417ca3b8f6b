import fc from 'fast-check';

/** Some that lie together, a leap day, and the ends of what four digits of a year let pass. */
const DATES = ['2026-02-20', '2026-02-22', '2026-03-02', '2024-02-29', '0001-01-01', '9999-12-31'];

export type Schema = Record<string, unknown>;

/** Values that a JSON Schema lets pass, as far as it uses the words that ours use. */
export function valuesOf(schema: Schema, document: unknown, depth = 0): fc.Arbitrary<unknown> {
  if (depth > 6) return fc.constant(null);
  const within = (inner: unknown) =>
    isSchema(inner) ? valuesOf(inner, document, depth + 1) : fc.constant(null);
  if (typeof schema.$ref === 'string') return within(at(document, ...schema.$ref.slice(2).split('/')));
  const several = schema.anyOf ?? schema.oneOf ?? schema.allOf;
  if (Array.isArray(several)) return fc.oneof(...several.map(within));
  if (Array.isArray(schema.enum)) return fc.constantFrom(...schema.enum);
  if ('const' in schema) return fc.constant(schema.const);
  switch (schema.type) {
    case 'object':
      return objectOf(schema, within);
    case 'array':
      return fc.array(within(schema.items), {
        minLength: Number(schema.minItems ?? 0),
        maxLength: 3,
      });
    case 'string':
      return textOf(schema);
    case 'integer':
      return fc.integer({
        min: Number(schema.minimum ?? 0),
        max: Math.min(Number(schema.maximum ?? 1e6), 2 ** 31 - 1),
      });
    case 'number':
      return numberOf(schema);
    case 'boolean':
      return fc.boolean();
    default:
      return fc.constant(null);
  }
}

/** Mostly what people type, at times the least and the most that is let pass. */
function numberOf({ minimum, exclusiveMinimum, maximum }: Schema): fc.Arbitrary<number> {
  const least = Number(minimum ?? Number.MIN_VALUE);
  const most = Number(maximum ?? Number.MAX_VALUE);
  const usual = fc.double({ min: Math.max(least, 0.5), max: Math.min(most, 1000), noNaN: true });
  const ends = fc.constantFrom(exclusiveMinimum === undefined ? least : Number.MIN_VALUE, most);
  return fc.oneof({ weight: 5, arbitrary: usual }, { weight: 1, arbitrary: ends });
}

function objectOf(schema: Schema, within: (inner: unknown) => fc.Arbitrary<unknown>): fc.Arbitrary<unknown> {
  const properties = isSchema(schema.properties) ? schema.properties : {};
  const required = Array.isArray(schema.required) ? schema.required.map(String) : [];
  const made = Object.fromEntries(Object.entries(properties).map(([name, one]) => [name, within(one)]));
  return fc.record(made, { requiredKeys: required.filter((name) => name in made) });
}

function textOf(schema: Schema): fc.Arbitrary<string> {
  if (schema.format === 'date') return fc.constantFrom(...DATES);
  if (typeof schema.pattern === 'string') return fc.stringMatching(new RegExp(schema.pattern));
  const minLength = Number(schema.minLength ?? 0);
  return fc.string({ minLength, maxLength: Math.min(Number(schema.maxLength ?? 20), minLength + 20) });
}

export function isSchema(value: unknown): value is Schema {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** What stands in a document under names, one in the other. */
export function at(value: unknown, ...names: readonly string[]): unknown {
  return names.reduce((found, name) => (isSchema(found) ? found[name] : undefined), value);
}
