import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { expect, it } from 'vitest';
import { STORE_FILE } from '../../daemon/src/store/sqlite.ts';
import { ATHLETE, athleteFields } from './fields.ts';
import { problemOf, useHouse } from './house.ts';

const house = useHouse();

it('a store found damaged is still read, and refuses to be written with what to do', async () => {
  const headers = await house().dashboard();
  const ok = async () => (await (await house().call('/v1/health')).json()).ok;
  expect(await ok()).toBe(true);
  const edit = { kind: 'athlete', athlete: ATHLETE, id: ATHLETE, fields: athleteFields };
  const stored = await house().call('/v1/records', { headers, body: { edits: [edit] } });
  expect(stored.status).toBe(200);
  const db = new DatabaseSync(join(house().folder, STORE_FILE));
  db.exec("UPDATE records SET fields = replace(fields, '}', ' }') WHERE kind = 'food'");
  db.close();
  expect((await house().call('/v1/records?kind=food', { headers })).status).toBe(503);
  expect(await ok()).toBe(false);
  house().now += 120_000;
  expect((await house().call('/v1/records?kind=athlete', { headers })).status).toBe(200);
  const refused = await house().call('/v1/records', { headers, body: { edits: [edit] } });
  expect(refused.status).toBe(503);
  expect(await problemOf(refused)).toMatchObject({ type: 'urn:platewright:problem:store-damaged' });
});
