import { checksum, sameBytes } from './checksum.ts';
import { bytes, damaged, type Row, text } from './rows.ts';

/** Name of the setting that holds the store's id. */
export const ID_SETTING = 'store';
/** Of the one that holds the id that it had before the first restore; absent before that. */
export const ORIGIN_SETTING = 'origin';
/** Of the one that holds the last date of an invented season; that it is there makes a store a demo. */
export const DEMO_SETTING = 'demo';

/** Columns of a setting, in the order in which they are summed and written. */
export const SETTING_COLUMNS = 'name, value, checksum';

/** Values in the order of SETTING_COLUMNS. */
export function settingValues(name: string, value: string) {
  return [name, value, checksum(name, value)] as const;
}

/** The value of a setting; throws StoreTrouble when the row is not as it was written. */
export function readSetting(row: Row): string {
  const [name, value] = [text(row, 'name'), text(row, 'value')];
  if (sameBytes(bytes(row, 'checksum'), checksum(name, value))) return value;
  throw damaged(`setting ${name}: its checksum does not match`);
}
