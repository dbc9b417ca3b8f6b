import { DatabaseSync } from 'node:sqlite';
import type { StoredRecord } from '@platewright/core/changes/merge.ts';
import { text } from './rows.ts';
import { checkedVersion } from './sqlite-file.ts';

/**
 * Records of photos in the file of a store or of a backup, of any schema that this program knows; without clocks. Throws
 * when the file can't be read or is none.
 */
export function photosInFile(path: string): StoredRecord[] {
  const db = new DatabaseSync(path, { readOnly: true });
  try {
    checkedVersion(db, path);
    const rows = db.prepare(`SELECT athlete, id, kind, fields FROM records WHERE kind = 'photo'`).all();
    return rows.map((row) => {
      const fields: StoredRecord['fields'] = JSON.parse(text(row, 'fields'));
      return {
        athlete: text(row, 'athlete'),
        id: text(row, 'id'),
        kind: text(row, 'kind'),
        fields,
        clocks: {},
      };
    });
  } finally {
    db.close();
  }
}
