import type { OutboxRow, RecordKey, RecordRow } from './rows.ts';

/** Name of the database; `Database` says what is in it. */
export const DATABASE = 'platewright';

/** What can be asked within one view of the replica, in which nothing moves. */
export interface Reading {
  meta(name: string): Promise<unknown>;
  record(key: RecordKey): Promise<RecordRow | undefined>;
  /** Rows of a kind with a date in a range, both ends included; kinds without a date have the empty one. */
  records(athlete: string, kind: string, from: string, to: string): Promise<RecordRow[]>;
  /** The newest row of a kind on or before a date that is wanted: a step or two in the index, however many years. */
  newest(
    athlete: string,
    kind: string,
    to: string,
    wanted: (row: RecordRow) => boolean,
  ): Promise<RecordRow | undefined>;
  outbox(state: OutboxRow['state'], limit?: number): Promise<OutboxRow[]>;
  outboxCount(state: OutboxRow['state']): Promise<number>;
  recordCount(): Promise<number>;
}

/** Reads the replica. */
export interface Reader {
  /** Null when there is no replica yet. Throws when the browser can't read what is there. */
  read<T>(work: (reading: Reading) => Promise<T>): Promise<T | null>;
}

/**
 * Reads by plain IndexedDB. Pages only read, and without the library that writes they open in half the time; see
 * `dexieReplica` for the writing.
 */
export function indexedDbReader(name: string = DATABASE): Reader {
  let opened: IDBDatabase | null = null;
  return {
    async read(work) {
      opened ??= await open(name, () => {
        opened = null;
      });
      return opened === null ? null : await work(readingOf(opened));
    },
  };
}

/** Opens a database that is there; null when it is not. Throws when the browser can't read it. `closed` is called when another version wants its place. */
async function open(name: string, closed: () => void): Promise<IDBDatabase | null> {
  const request = indexedDB.open(name);
  let isThere = true;
  // It was not there: leave it so, its tables are made by the one who writes.
  request.onupgradeneeded = () => {
    isThere = false;
    request.transaction?.abort();
  };
  const database = await result(request).catch((error) => {
    if (isThere) throw error;
    return null;
  });
  if (database === null) return null;
  database.onclose = closed;
  database.onversionchange = () => {
    database.close();
    closed();
  };
  return database;
}

function readingOf(database: IDBDatabase): Reading {
  const transaction = database.transaction(['records', 'outbox', 'meta'], 'readonly');
  const records = transaction.objectStore('records');
  const byDate = records.index('[athlete+kind+date]');
  const byState = transaction.objectStore('outbox').index('[state+order]');
  const metas = transaction.objectStore('meta');
  return {
    async meta(name) {
      return (await result(metas.get(name)))?.value;
    },
    record: (key) => result(records.get(key)),
    records: (athlete, kind, from, to) =>
      result(byDate.getAll(IDBKeyRange.bound([athlete, kind, from], [athlete, kind, to]))),
    newest: (athlete, kind, to, wanted) =>
      firstOf(byDate.openCursor(IDBKeyRange.bound([athlete, kind, ''], [athlete, kind, to]), 'prev'), wanted),
    outbox: (state, limit) => result(byState.getAll(ofState(state), limit)),
    outboxCount: (state) => result(byState.count(ofState(state))),
    recordCount: () => result(records.count()),
  };
}

function ofState(state: OutboxRow['state']): IDBKeyRange {
  return IDBKeyRange.bound([state, 0], [state, Number.POSITIVE_INFINITY]);
}

function result<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

function firstOf(
  request: IDBRequest<IDBCursorWithValue | null>,
  wanted: (row: RecordRow) => boolean,
): Promise<RecordRow | undefined> {
  return new Promise((resolve, reject) => {
    request.onerror = () => reject(request.error);
    request.onsuccess = () => {
      const cursor = request.result;
      if (cursor === null) resolve(undefined);
      else if (wanted(cursor.value)) resolve(cursor.value);
      else cursor.continue();
    };
  });
}
