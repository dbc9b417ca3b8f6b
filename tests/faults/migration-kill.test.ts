import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { constants } from 'node:os';
import { join, resolve } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { fileURLToPath } from 'node:url';
import { beforeEach, describe, expect, it } from 'vitest';
import { migrations, SCHEMA_VERSION } from '../../daemon/src/store/migrations/migrations.ts';
import { openSqliteStore, STORE_FILE } from '../../daemon/src/store/sqlite.ts';
import { useFolder } from '../support/use-folder.ts';
import { systemTool } from './system-tool.ts';

const OPEN_STORE = fileURLToPath(new URL('./open-store.ts', import.meta.url));
const COMPILED = resolve(import.meta.dirname, '../../node_modules/.cache/platewright');
const OLD = resolve(import.meta.dirname, '../../fixtures/stores');
/** Whatever changes a file or a folder. */
const CALLS = 'pwrite64,fsync,fdatasync,ftruncate,rename,unlink';

const strace = systemTool('strace', 'strace');
const older = migrations.map(({ version }) => version).filter((version) => version < SCHEMA_VERSION);

const folder = useFolder();

function lay(version: number): void {
  rmSync(folder(), { recursive: true });
  mkdirSync(folder());
  const db = new DatabaseSync(join(folder(), STORE_FILE));
  db.exec(readFileSync(join(OLD, `v${version}.sql`), 'utf8'));
  db.exec('PRAGMA journal_mode = WAL');
  db.close();
}

function openStore(under: readonly string[], ...args: string[]): { killed: boolean; stdout: string } {
  const [program = process.execPath, ...before] = [...under, process.execPath];
  const env = { ...process.env, NODE_COMPILE_CACHE: COMPILED };
  const ended = spawnSync(program, [...before, OPEN_STORE, folder(), ...args], { encoding: 'utf8', env });
  // A tracer ends as what it traced did, or says so by its exit code.
  const killed = ended.signal === 'SIGKILL' || ended.status === 128 + constants.signals.SIGKILL;
  if (!killed && ended.status !== 0) throw new Error(ended.stderr);
  return { killed, stdout: ended.stdout };
}

/** Schema and rows of the store file, read by nothing of ours. */
function content(): string {
  const db = new DatabaseSync(join(folder(), STORE_FILE));
  const tables = db.prepare("SELECT name, sql FROM sqlite_schema WHERE type = 'table' ORDER BY name").all();
  const rows = tables.map(({ name }) => db.prepare(`SELECT * FROM "${name}" ORDER BY 1, 2`).all());
  const version = db.prepare('PRAGMA user_version').get();
  db.close();
  return JSON.stringify([version, tables, rows]);
}

/** After a kill the store is wholly old or wholly new, and the next start ends what was begun. */
async function checkAfterKill(old: string, migrated: string): Promise<'old' | 'new'> {
  const now = content();
  expect([old, migrated]).toContain(now);
  const store = openSqliteStore(folder(), 'owner');
  expect(await store.verify()).toEqual([]);
  await store.close();
  expect(content()).toBe(migrated);
  return now === old ? 'old' : 'new';
}

describe.each(older)('a start over a store of schema %i', { timeout: 600_000 }, (version) => {
  let [old, migrated] = ['', ''];
  beforeEach(() => {
    lay(version);
    old = content();
    openSqliteStore(folder(), 'owner').close();
    migrated = content();
    lay(version);
  });

  it('killed before any statement leaves it old or new', async () => {
    const statements = Number(openStore([]).stdout);
    expect(statements).toBeGreaterThan(10);
    const found = { old: 0, new: 0 };
    for (let n = 1; n <= statements; n++) {
      lay(version);
      expect(openStore([], String(n)).killed).toBe(true);
      found[await checkAfterKill(old, migrated)] += 1;
    }
    console.log(`schema ${version}, ${statements} statements: ${JSON.stringify(found)}`);
    expect(found.old).toBeGreaterThan(0);
  });

  it.skipIf(strace === null)('killed at any write leaves it old or new', async () => {
    const found = { old: 0, new: 0 };
    for (const call of CALLS.split(',')) {
      for (let n = 1; ; n++) {
        lay(version);
        const options = [`--trace=${call}`, `--inject=${call}:signal=SIGKILL:when=${n}`];
        const under = [strace ?? '', '-qq', '-o', '/dev/null', ...options];
        if (!openStore(under).killed) break;
        found[await checkAfterKill(old, migrated)] += 1;
      }
    }
    console.log(`schema ${version}, writes: ${JSON.stringify(found)}`);
    expect(found.old).toBeGreaterThan(0);
  });
});
