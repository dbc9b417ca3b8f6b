import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { openSqliteStore, STORE_FILE } from '../../daemon/src/store/sqlite.ts';
import { findFaults } from '../../daemon/src/store/sqlite-verify.ts';
import { useFolder } from '../support/use-folder.ts';
import { weighIns } from './load.ts';

const FLIPS = 500;

const folder = useFolder();

/** A store with something in every table, as a file. */
async function filled(): Promise<Buffer> {
  const store = openSqliteStore(folder(), 'owner');
  await store.append(weighIns('a', 150), (clock) => clock);
  await store.fold(20);
  const rights = { athlete: null, access: 'write' } as const;
  const times = { pairedAt: 1, lastSeenAt: 2, revokedAt: null };
  for (const id of ['phone', 'tablet']) {
    await store.putDevice({ id, name: id, kind: 'dashboard', origin: null, tokenHash: id, rights, ...times });
  }
  await store.putCode('h', 10, rights);
  await store.close();
  return readFileSync(join(folder(), STORE_FILE));
}

/** Whatever a program could read of a store, a row a line; null when it can't be read at all. */
function readable(path: string): string[] | null {
  const db = new DatabaseSync(path, { readOnly: true });
  try {
    const names = db.prepare("SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name").all();
    return [
      JSON.stringify([db.prepare('PRAGMA application_id').get(), db.prepare('PRAGMA user_version').get()]),
      ...names.flatMap(({ name }) =>
        db
          .prepare(`SELECT * FROM "${name}" ORDER BY 1, 2`)
          .all()
          .map((row) => `${name} ${JSON.stringify(row)}`),
      ),
    ];
  } catch {
    return null;
  } finally {
    db.close();
  }
}

const RECORD = /^records .*"id":"([\w-]+)"/;

it(`notices each of ${FLIPS} flipped bits that change anything, and names the record`, async () => {
  const sound = await filled();
  const copy = join(folder(), 'flipped.sqlite');
  const before = readable(join(folder(), STORE_FILE)) ?? [];
  const unnoticed: number[] = [];
  const unnamed: string[] = [];
  const count = { altering: 0, idle: 0, named: 0 };
  const bits = fc.sample(fc.integer({ min: 0, max: sound.length * 8 - 1 }), {
    numRuns: FLIPS * 6,
    seed: 20260302,
  });
  for (const bit of bits) {
    if (count.altering === FLIPS) break;
    const bytes = Buffer.from(sound);
    bytes[bit >> 3] = (bytes[bit >> 3] ?? 0) ^ (1 << (bit & 7));
    writeFileSync(copy, bytes);
    const after = readable(copy);
    const faults = await findFaults(copy).catch((error: Error) => [error.message]);
    const altered = after === null ? [] : after.filter((line, i) => line !== before[i]);
    if (after !== null && altered.length === 0 && after.length === before.length && faults.length === 0) {
      count.idle += 1;
      continue;
    }
    count.altering += 1;
    if (faults.length === 0) unnoticed.push(bit);
    const id =
      altered.length === 1 && after?.length === before.length
        ? RECORD.exec(altered[0] ?? '')?.[1]
        : undefined;
    if (id === undefined) continue;
    count.named += 1;
    if (!faults.some((fault) => fault.includes(id))) unnamed.push(`${id}: ${faults.join('; ')}`);
  }
  console.log(`${JSON.stringify(count)}: idle ones hit bytes that no row uses`);
  expect(unnoticed).toEqual([]);
  expect(unnamed).toEqual([]);
  expect(count.altering).toBe(FLIPS);
  expect(count.named).toBeGreaterThan(30);
});
