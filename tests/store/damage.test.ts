import { copyFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { beforeEach, describe, expect, it } from 'vitest';
import { openSqliteStore, STORE_FILE } from '../../daemon/src/store/sqlite.ts';
import { findFaults } from '../../daemon/src/store/sqlite-verify.ts';
import type { Store } from '../../daemon/src/store/store.ts';
import { useFolder } from '../support/use-folder.ts';
import { weighIn } from './contract.ts';

const folder = useFolder();

let file: string;
beforeEach(() => {
  file = join(folder(), STORE_FILE);
});

/** A store of a few pages with something in every table. */
async function fill(): Promise<void> {
  const store = openSqliteStore(folder(), 'owner');
  const changes = Array.from({ length: 300 }, (_, i) =>
    weighIn(`c${i}`, {
      date: `2026-01-${String((i % 28) + 1).padStart(2, '0')}`,
      kg: 80 + i,
      note: `note ${i}`,
    }),
  );
  await store.append(changes, (clock) => clock);
  await store.fold(20);
  const rights = { athlete: null, access: 'write' } as const;
  for (const id of ['phone', 'tablet']) {
    const times = { pairedAt: 1, lastSeenAt: 2, revokedAt: null };
    await store.putDevice({ id, name: id, kind: 'dashboard', origin: null, tokenHash: id, rights, ...times });
  }
  await store.putCode('h', 10, rights);
  await store.close();
}

function tamper(sql: string): void {
  const db = new DatabaseSync(file);
  db.exec(sql);
  db.close();
}

/** Everything that a store holds, as a program would read it. */
function contentOf(path: string): string | null {
  const db = new DatabaseSync(path, { readOnly: true });
  try {
    const tables = ['changes', 'folded', 'head', 'records', 'devices', 'codes', 'settings'];
    return JSON.stringify([
      db.prepare('PRAGMA application_id').get(),
      db.prepare('PRAGMA user_version').get(),
      ...tables.map((table) => db.prepare(`SELECT * FROM ${table} ORDER BY 1, 2`).all()),
    ]);
  } catch {
    return null;
  } finally {
    db.close();
  }
}

async function faultsIn(path: string): Promise<string[]> {
  return await findFaults(path).catch((error: Error) => [error.message]);
}

describe('one flipped bit', () => {
  it('is noticed wherever it changes anything', async () => {
    await fill();
    const sound = readFileSync(file);
    const content = contentOf(file);
    const copy = join(folder(), 'flipped.sqlite');
    // Spread over the whole file, at every place of a byte.
    const step = Math.floor((sound.length * 8) / 220) | 1;
    const unnoticed: number[] = [];
    let noticed = 0;
    for (let bit = 7; bit < sound.length * 8; bit += step) {
      const bytes = Buffer.from(sound);
      bytes[bit >> 3] = (bytes[bit >> 3] ?? 0) ^ (1 << (bit & 7));
      writeFileSync(copy, bytes);
      if ((await faultsIn(copy)).length > 0) noticed += 1;
      else if (contentOf(copy) !== content) unnoticed.push(bit);
    }
    expect(unnoticed).toEqual([]);
    expect(noticed).toBeGreaterThan(100);
  });

  it('is noticed in every record, which is named', async () => {
    await fill();
    tamper(`UPDATE records SET fields = replace(fields, '"kg":103', '"kg":102')`);
    expect(await faultsIn(file)).toEqual(['record weigh-c23 of athlete ann: its checksum does not match']);
    const store = openSqliteStore(folder(), 'owner');
    expect((await store.record('ann', 'weigh-c22'))?.fields.kg).toBe(102);
    await expect(store.record('ann', 'weigh-c23')).rejects.toThrow(/weigh-c23.*platewright verify/);
    await store.close();
  });
});

describe('a record that was set back with its checksum', () => {
  it('is noticed', async () => {
    await fill();
    const old = openSqliteStore(folder(), 'owner');
    copyFileSync(file, join(folder(), 'old.sqlite'));
    const later = weighIn('later', { kg: 99 }, { record: 'weigh-c5', clock: '00000000ffff-0000-phone' });
    await old.append([later], (clock) => clock);
    await old.fold(999);
    await old.close();
    expect(await faultsIn(file)).toEqual([]);
    tamper(`ATTACH '${join(folder(), 'old.sqlite')}' AS old;
      UPDATE records SET (fields, clocks, checksum) =
        (SELECT fields, clocks, checksum FROM old.records WHERE id = 'weigh-c5') WHERE id = 'weigh-c5'`);
    expect(await faultsIn(file)).toEqual(['records: one is missing, or was set back']);
  });
});

describe('a store that is found damaged', () => {
  const change = weighIn('new', { kg: 80 });
  const write = (store: Store) => store.append([change], (clock) => clock);

  it.each([
    ['head', `UPDATE head SET seq = seq + 1`],
    ['end of the log', 'DELETE FROM changes WHERE seq = 300'],
    ['device', `UPDATE devices SET revoked_at = NULL, name = 'x' WHERE id = 'phone'`],
  ])('at the start in its %s takes no changes, and is still read', async (_, sql) => {
    await fill();
    tamper(sql);
    const store = openSqliteStore(folder(), 'owner');
    expect(store.trouble()?.code).toBe('damaged');
    expect((await store.records({ limit: 5 })).length).toBe(5);
    await expect(write(store)).rejects.toThrow(/damaged.*platewright verify/);
    await expect(store.putSetting('a', 'b')).rejects.toThrow(/damaged/);
    await expect(store.backup(join(folder(), 'copy.sqlite'))).rejects.toThrow(/damaged/);
    await store.close();
  });

  it('while it is read takes no changes from then on', async () => {
    await fill();
    tamper(`UPDATE changes SET body = replace(body, 'note 30', 'note 31') WHERE seq = 31`);
    const store = openSqliteStore(folder(), 'owner');
    expect(store.trouble()).toBeNull();
    await expect(store.changesSince(30, 5)).rejects.toThrow(/change 31/);
    await expect(write(store)).rejects.toThrow(/change 31/);
    expect(await store.changesSince(35, 99)).toMatchObject({ seq: 134, more: true });
    await store.close();
  });

  it('is not copied over as a backup', async () => {
    await fill();
    tamper(`UPDATE records SET date = '2020-01-01' WHERE id = 'weigh-c7'`);
    const store = openSqliteStore(folder(), 'owner');
    await expect(store.backup(join(folder(), 'copy.sqlite'))).rejects.toThrow(/weigh-c7/);
    await expect(findFaults(join(folder(), 'copy.sqlite'))).rejects.toThrow();
    await store.close();
  });
});
