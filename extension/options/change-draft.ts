import type { Json } from '@platewright/core/changes/change.ts';
import { parseDecimal } from '@platewright/core/units/decimal.ts';

/** A field of a change as text to edit; null for one that is no number or text and stays as it is. */
export function fieldText(value: Json): string | null {
  return typeof value === 'string' || typeof value === 'number' ? String(value) : null;
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

/** A change in one line: what it is about and what it sets, but for the food's id, which says nothing beside its name. */
export function changeWords(kind: string, fields: Record<string, Json>): string {
  if (fields.removed === true) return `${kind}: removed`;
  const said = Object.entries(fields).flatMap(([field, value]) => {
    const text = field === 'food' ? null : fieldText(value);
    return text === null ? [] : [`${field} ${text}`];
  });
  return `${kind}: ${said.slice(0, 5).join(', ')}`;
}
