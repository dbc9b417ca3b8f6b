import fc from 'fast-check';
import { openApi } from '../../daemon/src/server/openapi.ts';

/** The API's description as a plain JSON document, as an outsider gets it. */
const document = JSON.parse(JSON.stringify(openApi('cookie')));

type Schema = Record<string, unknown>;

export interface Operation {
  method: string;
  path: string;
  /** Makes bodies that fit the description; null where none is taken. */
  body: fc.Arbitrary<unknown> | null;
  parameters: readonly string[];
}

/** Every operation of the document. */
export function operations(): Operation[] {
  return Object.entries<Record<string, Schema>>(document.paths).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, operation]) => {
      const body: unknown = at(operation, 'requestBody', 'content', 'application/json', 'schema');
      const parameters = Array.isArray(operation.parameters) ? operation.parameters : [];
      return {
        method: method.toUpperCase(),
        path,
        body: isSchema(body) ? valuesOf(body, 0) : null,
        parameters: parameters.filter((p) => p.in === 'query').map((p) => String(p.name)),
      };
    }),
  );
}

/** Values that a JSON Schema lets pass, as far as it uses the words that ours use. */
function valuesOf(schema: Schema, depth: number): fc.Arbitrary<unknown> {
  if (depth > 6) return fc.constant(null);
  if (typeof schema.$ref === 'string') {
    const named: unknown = at(document, ...schema.$ref.slice(2).split('/'));
    return isSchema(named) ? valuesOf(named, depth + 1) : fc.constant(null);
  }
  const several = schema.anyOf ?? schema.oneOf ?? schema.allOf;
  if (Array.isArray(several))
    return fc.oneof(...several.filter(isSchema).map((one) => valuesOf(one, depth + 1)));
  if (Array.isArray(schema.enum)) return fc.constantFrom(...schema.enum);
  if ('const' in schema) return fc.constant(schema.const);
  switch (schema.type) {
    case 'object':
      return objectOf(schema, depth);
    case 'array':
      return fc.array(isSchema(schema.items) ? valuesOf(schema.items, depth + 1) : fc.constant(null), {
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
      return fc.double({ min: 0.5, max: Math.min(Number(schema.maximum ?? 1000), 1000), noNaN: true });
    case 'boolean':
      return fc.boolean();
    default:
      return fc.constant(null);
  }
}

function objectOf(schema: Schema, depth: number): fc.Arbitrary<unknown> {
  const properties = isSchema(schema.properties) ? schema.properties : {};
  const required = Array.isArray(schema.required) ? schema.required.map(String) : [];
  const made = Object.fromEntries(
    Object.entries(properties).flatMap(([name, one]) =>
      isSchema(one) ? [[name, valuesOf(one, depth + 1)]] : [],
    ),
  );
  return fc.record(made, { requiredKeys: required.filter((name) => name in made) });
}

function textOf(schema: Schema): fc.Arbitrary<string> {
  if (schema.format === 'date') return fc.constantFrom('2026-03-02', '2024-02-29', '1999-12-31');
  if (typeof schema.pattern === 'string') return fc.stringMatching(new RegExp(schema.pattern));
  const minLength = Number(schema.minLength ?? 0);
  return fc.string({ minLength, maxLength: Math.min(Number(schema.maxLength ?? 20), minLength + 20) });
}

function isSchema(value: unknown): value is Schema {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function at(value: unknown, ...names: readonly string[]): unknown {
  return names.reduce((found, name) => (isSchema(found) ? found[name] : undefined), value);
}
