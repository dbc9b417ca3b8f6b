import { pictureTypeSchema } from '@platewright/core/records/photo.ts';
import * as z from 'zod/mini';
import { api, components } from './api.ts';

const SCHEMAS = '#/components/schemas/';

type ApiRoute = (typeof api)[number];

/** The API as an OpenAPI 3.1 document, made from the schemas that also check each request; `cookie` is the dashboard's here. */
export function openApi(cookie: string) {
  const paths: Record<string, Record<string, object>> = {};
  for (const route of api) paths[route.path] = { ...paths[route.path], [route.method]: operation(route) };
  return {
    openapi: '3.1.1',
    info: {
      title: 'Platewright',
      version: '1',
      description:
        'Records go in, views come out. On loopback, or over TLS; every device is paired with a code and held to its rights.',
      license: { name: 'MIT', identifier: 'MIT' },
    },
    servers: [{ url: '/' }],
    security: [{ token: [] }, { cookie: [] }],
    paths,
    components: {
      schemas: componentSchemas(),
      securitySchemes: {
        token: { type: 'http', scheme: 'bearer', description: 'An extension’s token, from pairing.' },
        cookie: {
          type: 'apiKey',
          in: 'cookie',
          name: cookie,
          description: 'The dashboard’s; its name is of the address at which this description was read.',
        },
      },
    },
  };
}

function operation(route: ApiRoute): object {
  const parameters = [
    ...pathParameters(route.path),
    ...(route.query === undefined ? [] : queryParameters(route.query)),
  ];
  return {
    operationId: route.id,
    summary: route.summary,
    ...(route.open === undefined ? {} : { security: [] }),
    ...(parameters.length === 0 ? {} : { parameters }),
    ...(route.body === undefined
      ? {}
      : { requestBody: { required: true, content: bodyContent(route.body) } }),
    responses: {
      ...answer(route.answer),
      default: {
        description: 'A problem',
        content: content('application/problem+json', reference('Problem')),
      },
    },
  };
}

function bodyContent(name: NonNullable<ApiRoute['body']>): object {
  return name === 'picture' ? pictures() : content('application/json', reference(name));
}

function answer(name: ApiRoute['answer']): object {
  if (name === 'none') return { 204: { description: 'Done' } };
  return { 200: { description: 'The answer', content: answerContent(name) } };
}

function answerContent(name: Exclude<ApiRoute['answer'], 'none'>): object {
  if (name === 'events') return content('text/event-stream', { type: 'string' });
  if (name === 'metrics') return content('application/openmetrics-text', { type: 'string' });
  if (name === 'picture') return pictures();
  return content('application/json', reference(name));
}

function pictures(): object {
  // Bytes as they are: since OpenAPI 3.1 no schema says so.
  return Object.assign({}, ...pictureTypeSchema.options.map((type) => content(type, {})));
}

function content(type: string, schema: object): object {
  return { [type]: { schema } };
}

function reference(name: string): { $ref: string } {
  return { $ref: SCHEMAS + name };
}

function pathParameters(path: string): object[] {
  return [...path.matchAll(/\{(\w+)\}/g)].map(([, name]) => ({
    name,
    in: 'path',
    required: true,
    schema: { type: 'string' },
  }));
}

function queryParameters(query: z.ZodMiniObject): object[] {
  const { properties = {}, required = [] } = z.toJSONSchema(query, { io: 'input' });
  return Object.entries(properties).map(([name, schema]) => ({
    name,
    in: 'query',
    required: required.includes(name),
    schema,
  }));
}

/** Any JSON value is what JSON Schema calls `{}`, so what zod can't represent is that. */
function componentSchemas(): object {
  const registry = z.registry<{ id: string }>();
  for (const [id, schema] of Object.entries(components)) registry.add(schema, { id });
  const { schemas } = z.toJSONSchema(registry, {
    io: 'input',
    uri: (id) => SCHEMAS + id,
    unrepresentable: 'any',
  });
  for (const schema of Object.values(schemas)) {
    delete schema.$id;
    delete schema.$schema;
  }
  return schemas;
}
