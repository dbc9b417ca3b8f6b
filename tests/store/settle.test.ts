import { statSync } from 'node:fs';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { settleWhenQuiet } from '../../daemon/src/store/sqlite-settle.ts';
import { useFolder } from '../support/use-folder.ts';

const folder = useFolder();
let db: DatabaseSync;
const size = () => statSync(join(folder(), 'a.sqlite')).size;

beforeEach(() => {
  vi.useFakeTimers();
  db = new DatabaseSync(join(folder(), 'a.sqlite'));
  db.exec('PRAGMA journal_mode = WAL; CREATE TABLE t (x)');
  db.exec('PRAGMA wal_checkpoint(TRUNCATE)');
});

afterEach(() => {
  vi.useRealTimers();
  if (db.isOpen) db.close();
});

/** Some 8 MB, more than SQLite by itself leaves in the log. */
function writeMuch(): void {
  db.exec(`WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 2000)
    INSERT INTO t SELECT randomblob(4000) FROM n`);
}

it('copies the log into the database once nobody has written for a while', () => {
  const { written } = settleWhenQuiet(db);
  const before = size();
  for (let i = 0; i < 3; i++) {
    written();
    writeMuch();
    vi.advanceTimersByTime(900);
    expect(size()).toBe(before);
  }
  vi.advanceTimersByTime(200);
  expect(size()).toBeGreaterThan(before + 20e6);
});

it('leaves a closed database alone', () => {
  const { written, stop } = settleWhenQuiet(db);
  written();
  stop();
  db.close();
  vi.advanceTimersByTime(5000);
  expect(vi.getTimerCount()).toBe(0);
});
