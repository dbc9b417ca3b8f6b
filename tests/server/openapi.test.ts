import { expect, it } from 'vitest';
import { api, components } from '../../daemon/src/server/api.ts';
import { openApi } from '../../daemon/src/server/openapi.ts';
import { useHouse } from './house.ts';

const house = useHouse();

function* referencesIn(node: unknown): Generator<string> {
  if (node === null || typeof node !== 'object') return;
  for (const [key, value] of Object.entries(node)) {
    if (key === '$ref') yield String(value);
    else yield* referencesIn(value);
  }
}

it('describes each route that there is, and no other', () => {
  const served = house()
    .app.routes.filter(({ method, handler }) => method !== 'ALL' && handler.length < 2)
    .map(({ method, path }) => `${method.toLowerCase()} ${path.replace(/:(\w+)/g, '{$1}')}`);
  expect(served.length).toBeGreaterThan(15);
  expect([...new Set(served)].sort()).toEqual(api.map(({ method, path }) => `${method} ${path}`).sort());
});

it('is OpenAPI 3.1 with every reference in place', async () => {
  const answer = await house().call('/v1/openapi.json');
  expect(answer.status).toBe(200);
  const document = await answer.json();
  expect(document).toEqual(JSON.parse(JSON.stringify(openApi('platewright-8787'))));
  expect(document.openapi).toMatch(/^3\.1\./);
  const references = [...referencesIn(document)];
  expect(references.length).toBeGreaterThan(20);
  for (const reference of references) {
    expect(reference).toMatch(/^#\/components\/schemas\/\w+$/);
    expect(document.components.schemas).toHaveProperty(reference.split('/').at(-1) ?? '');
  }
  expect(Object.keys(document.components.schemas)).toEqual(expect.arrayContaining(Object.keys(components)));
  const operations = Object.values<Record<string, { operationId: string; responses: object }>>(
    document.paths,
  ).flatMap((path) => Object.values(path));
  expect(new Set(operations.map(({ operationId }) => operationId)).size).toBe(api.length);
  for (const { responses } of operations) expect(Object.keys(responses)).toContain('default');
});

it('asks for pairing on each route that is not marked as open', async () => {
  for (const { method, path, open } of api) {
    const answer = await house().call(path.replace('{id}', 'x'), {
      method: method.toUpperCase(),
      headers: { origin: 'http://127.0.0.1:8787', 'content-type': 'application/json' },
    });
    expect([path, answer.status === 401]).toEqual([path, open !== true]);
  }
});
