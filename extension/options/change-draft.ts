import type { Json } from '@platewright/core/changes/change.ts';
import { parseDecimal } from '@platewright/core/units/decimal.ts';

/** Fields that say nothing to a person: the id of a food beside its name, and the moment of writing. */
const MUTE = new Set(['food', 'at']);

/** The fields that a person can read and edit: name, what it is called, value as text. Others stay as they are. */
export function editableFields(
  fields: Record<string, Json>,
): { field: string; label: string; text: string }[] {
  return Object.entries(fields).flatMap(([field, value]) => {
    if (MUTE.has(field) || (typeof value !== 'string' && typeof value !== 'number')) return [];
    return { field, label: spaced(field), text: String(value) };
  });
}

/** `bodyMassKg` as `body mass kg`. */
function spaced(field: string): string {
  return field.replaceAll(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}

/** The fields with what was typed for some; a number stays a number. Null when a number can't be read. */
export function editedFields(
  fields: Record<string, Json>,
  typed: Readonly<Record<string, string>>,
): Record<string, Json> | null {
  const edited = { ...fields };
  for (const [field, text] of Object.entries(typed)) {
    if (typeof fields[field] === 'number') {
      const number = parseDecimal(text);
      if (number === undefined) return null;
      edited[field] = number;
    } else edited[field] = text;
  }
  return edited;
}

/** A change in one line: what it is about and what it sets. */
export function changeWords(kind: string, fields: Record<string, Json>): string {
  if (fields.removed === true) return `${kind}: removed`;
  const said = editableFields(fields).map(({ label, text }) => `${label} ${text}`);
  return `${kind}: ${said.slice(0, 5).join(', ')}`;
}
