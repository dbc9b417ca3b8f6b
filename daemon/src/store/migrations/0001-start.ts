/**
 * The first tables. `changes.hash` covers the row and the hash before it; `head` names the last row, so that a log cut
 * short is noticed too. `records` is the fold of `changes`.
 */
export const start = {
  version: 1,
  sql: `
    CREATE TABLE changes (
      seq INTEGER PRIMARY KEY,
      id TEXT NOT NULL UNIQUE,
      body TEXT NOT NULL,
      hash BLOB NOT NULL
    ) STRICT;
    CREATE TABLE head (
      one INTEGER PRIMARY KEY CHECK (one = 1),
      seq INTEGER NOT NULL,
      hash BLOB NOT NULL,
      clock TEXT
    ) STRICT;
    INSERT INTO head VALUES (1, 0, zeroblob(32), NULL);
    CREATE TABLE records (
      athlete TEXT NOT NULL,
      id TEXT NOT NULL,
      kind TEXT NOT NULL,
      date TEXT,
      fields TEXT NOT NULL,
      clocks TEXT NOT NULL,
      PRIMARY KEY (athlete, id)
    ) STRICT, WITHOUT ROWID;
    CREATE INDEX records_by_kind ON records (kind, athlete, date);
    CREATE TABLE devices (
      id TEXT PRIMARY KEY,
      name TEXT NOT NULL,
      kind TEXT NOT NULL CHECK (kind IN ('extension', 'dashboard')),
      origin TEXT,
      token_hash TEXT NOT NULL UNIQUE,
      paired_at INTEGER NOT NULL,
      last_seen_at INTEGER,
      revoked_at INTEGER
    ) STRICT;
    CREATE TABLE codes (
      hash TEXT PRIMARY KEY,
      expires_at INTEGER NOT NULL,
      tries_left INTEGER NOT NULL
    ) STRICT;
    CREATE TABLE settings (name TEXT PRIMARY KEY, value TEXT NOT NULL) STRICT;
  `,
} as const;
