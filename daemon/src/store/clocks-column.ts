import type { Clock } from '@platewright/core/changes/clock.ts';
import type { StoredRecord } from '@platewright/core/changes/merge.ts';

/** The clocks of a record's fields as text; one clock alone when all fields were written together, as most are. */
export function packClocks(clocks: StoredRecord['clocks']): string {
  const [first, ...others] = Object.values(clocks);
  const isOne = first !== undefined && others.every((clock) => clock === first);
  return JSON.stringify(isOne ? first : clocks);
}

export function unpackClocks(text: string, fields: StoredRecord['fields']): StoredRecord['clocks'] {
  const packed: Clock | StoredRecord['clocks'] = JSON.parse(text);
  if (typeof packed !== 'string') return packed;
  return Object.fromEntries(Object.keys(fields).map((field) => [field, packed]));
}
