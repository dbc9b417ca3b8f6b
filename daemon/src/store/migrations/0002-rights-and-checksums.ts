/**
 * Rights of devices and of the codes that make them: until then every device was an owner's. A checksum for each row
 * that had none, a sum over all records, and a place for the ids of folded changes. `checksum` and `add_up` are functions
 * of this program.
 */
export const rightsAndChecksums = {
  version: 2,
  sql: `
    ALTER TABLE devices ADD COLUMN athlete TEXT;
    ALTER TABLE devices ADD COLUMN access TEXT NOT NULL DEFAULT 'write' CHECK (access IN ('write', 'read'));
    ALTER TABLE devices ADD COLUMN checksum BLOB NOT NULL DEFAULT X'';
    UPDATE devices SET checksum = checksum(id, name, kind, origin, token_hash, paired_at, last_seen_at, revoked_at,
      athlete, access);
    ALTER TABLE codes ADD COLUMN athlete TEXT;
    ALTER TABLE codes ADD COLUMN access TEXT NOT NULL DEFAULT 'write' CHECK (access IN ('write', 'read'));
    ALTER TABLE codes ADD COLUMN checksum BLOB NOT NULL DEFAULT X'';
    UPDATE codes SET checksum = checksum(hash, expires_at, tries_left, athlete, access);
    ALTER TABLE settings ADD COLUMN checksum BLOB NOT NULL DEFAULT X'';
    UPDATE settings SET checksum = checksum(name, value);
    ALTER TABLE records ADD COLUMN checksum BLOB NOT NULL DEFAULT X'';
    UPDATE records SET checksum = checksum(athlete, id, kind, date, fields, clocks);
    CREATE TABLE folded (
      id TEXT PRIMARY KEY,
      seq INTEGER NOT NULL,
      clock TEXT NOT NULL,
      checksum BLOB NOT NULL
    ) STRICT, WITHOUT ROWID;
    ALTER TABLE head ADD COLUMN folded_seq INTEGER NOT NULL DEFAULT 0;
    ALTER TABLE head ADD COLUMN folded_hash BLOB NOT NULL
      DEFAULT X'0000000000000000000000000000000000000000000000000000000000000000';
    ALTER TABLE head ADD COLUMN records_sum BLOB NOT NULL DEFAULT X'';
    ALTER TABLE head ADD COLUMN checksum BLOB NOT NULL DEFAULT X'';
    UPDATE head SET records_sum = (SELECT add_up(checksum) FROM records);
    UPDATE head SET checksum = checksum(seq, hash, clock, folded_seq, folded_hash, records_sum);
  `,
} as const;
