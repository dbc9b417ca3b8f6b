import type fc from 'fast-check';
import { openApi } from '../../daemon/src/server/openapi.ts';
import { at, isSchema, type Schema, valuesOf } from '../support/values-of.ts';

/** The API's description as a plain JSON document, as an outsider gets it. */
const document = JSON.parse(JSON.stringify(openApi('cookie')));

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
        body: isSchema(body) ? valuesOf(body, document) : null,
        parameters: parameters.filter((p) => p.in === 'query').map((p) => String(p.name)),
      };
    }),
  );
}
