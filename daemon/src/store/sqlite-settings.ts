import { randomBytes } from 'node:crypto';
import type { DatabaseSync } from 'node:sqlite';
import { text } from './rows.ts';
import { ID_SETTING, readSetting, SETTING_COLUMNS, settingValues } from './setting-row.ts';

/** Settings of a SQLite store, its own id among them. */
export function settingTable(db: DatabaseSync) {
  const select = db.prepare(`SELECT ${SETTING_COLUMNS} FROM settings WHERE name = ?`);
  const upsert = db.prepare(
    `INSERT INTO settings (${SETTING_COLUMNS}) VALUES (?, ?, ?)
     ON CONFLICT (name) DO UPDATE SET value = excluded.value, checksum = excluded.checksum`,
  );
  const newId = (): string => {
    const id = randomBytes(8).toString('hex');
    upsert.run(...settingValues(ID_SETTING, id));
    return id;
  };

  return {
    get(name: string): string | null {
      const row = select.get(name);
      return row === undefined ? null : readSetting(row);
    },

    put(name: string, value: string): void {
      upsert.run(...settingValues(name, value));
    },

    /** The store's id, made when there is none; as it stands in a damaged row, so that the store can still be looked at. */
    id(): string {
      const row = select.get(ID_SETTING);
      return row === undefined ? newId() : text(row, 'value');
    },

    /** Gives the store a new id. */
    newId,
  };
}
