import { randomBytes } from 'node:crypto';
import type { DatabaseSync } from 'node:sqlite';
import { text } from './rows.ts';
import { ID_SETTING, ORIGIN_SETTING, readSetting, SETTING_COLUMNS, settingValues } from './setting-row.ts';

/** Settings of a SQLite store, its own id among them. */
export function settingTable(db: DatabaseSync) {
  const select = db.prepare(`SELECT ${SETTING_COLUMNS} FROM settings WHERE name = ?`);
  const upsert = db.prepare(
    `INSERT INTO settings (${SETTING_COLUMNS}) VALUES (?, ?, ?)
     ON CONFLICT (name) DO UPDATE SET value = excluded.value, checksum = excluded.checksum`,
  );
  const get = (name: string): string | null => {
    const row = select.get(name);
    return row === undefined ? null : readSetting(row);
  };
  const put = (name: string, value: string): void => {
    upsert.run(...settingValues(name, value));
  };
  const newId = (): string => {
    const id = randomBytes(8).toString('hex');
    put(ID_SETTING, id);
    return id;
  };
  const origin = (): string | null => get(ORIGIN_SETTING) ?? get(ID_SETTING);

  return {
    get,
    put,
    origin,

    /** The store's id, made when there is none; as it stands in a damaged row, so that the store can still be looked at. */
    id(): string {
      const row = select.get(ID_SETTING);
      return row === undefined ? newId() : text(row, 'value');
    },

    /** Gives a restored store a new id. */
    renew(): void {
      put(ORIGIN_SETTING, origin() ?? newId());
      newId();
    },
  };
}
