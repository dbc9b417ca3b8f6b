import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Change } from '@platewright/core/changes/change.ts';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { openSqliteStore, STORE_FILE } from '../../daemon/src/store/sqlite.ts';
import type { Stamp } from '../../daemon/src/store/store.ts';
import { logOf } from '../support/log.ts';
import { useFolder } from '../support/use-folder.ts';
import { weighIns } from './load.ts';

const RUNS = 500;
const PUSHES = 40;
const BATCH = 3;
const keep: Stamp = (clock) => clock;

const folder = useFolder();

/** What a power cut may leave of the write-ahead log: its end gone, a sector of it garbled, or zeros from somewhere on. */
const tear = fc.record({
  how: fc.constantFrom('cut', 'garble', 'zero'),
  /** Thousandths of the log. */
  where: fc.integer({ min: 0, max: 999 }),
  seed: fc.integer({ min: 1, max: 255 }),
});

function torn(whole: Buffer, { how, where, seed }: { how: string; where: number; seed: number }): Buffer {
  const at = Math.floor((whole.length * where) / 1000);
  if (how === 'cut') return whole.subarray(0, at);
  const bytes = Buffer.from(whole);
  if (how === 'zero') return bytes.fill(0, at);
  for (let i = at; i < Math.min(at + 512, bytes.length); i++) bytes[i] = (i * seed) & 0xff;
  return bytes;
}

/** A store file and the log beside it, as they stand while a daemon writes. */
async function liveFiles(): Promise<{ main: Buffer; log: Buffer; changes: Change[] }> {
  openSqliteStore(folder(), 'owner').close();
  const store = openSqliteStore(folder(), 'owner');
  const changes: Change[] = [];
  for (let push = 0; push < PUSHES; push++) {
    const batch = weighIns(`c-${push}`, BATCH);
    await store.append(batch, keep);
    changes.push(...batch);
  }
  const files = {
    main: readFileSync(join(folder(), STORE_FILE)),
    log: readFileSync(join(folder(), `${STORE_FILE}-wal`)),
  };
  await store.close();
  return { ...files, changes };
}

it(`torn ${RUNS} times, a write-ahead log leaves whole pushes from the first on, and a sound store`, async () => {
  const { main, log, changes } = await liveFiles();
  let kept = 0;
  for (const damage of fc.sample(tear, { numRuns: RUNS, seed: 20260302 })) {
    writeFileSync(join(folder(), STORE_FILE), main);
    writeFileSync(join(folder(), `${STORE_FILE}-wal`), torn(log, damage));
    rmSync(join(folder(), `${STORE_FILE}-shm`), { force: true });
    const store = openSqliteStore(folder(), 'owner');
    const found = await logOf(store);
    expect(found.length % BATCH).toBe(0);
    expect(found).toEqual(changes.slice(0, found.length));
    expect(await store.verify()).toEqual([]);
    await store.append(changes, keep);
    expect(await store.lastSeq()).toBe(changes.length);
    await store.close();
    kept += found.length;
  }
  console.log(
    `${RUNS} torn logs kept ${((100 * kept) / RUNS / changes.length).toFixed(0)} % of the changes on average`,
  );
});
