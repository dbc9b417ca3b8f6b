import { isWithin, limits } from '@platewright/core/records/limits.ts';
import { parseDecimal } from '@platewright/core/units/decimal.ts';
import { type BodyMassUnit, bodyMassIn, kgFromPounds, parseBodyMass } from '@platewright/core/units/mass.ts';
import { plain } from '../../athlete-form/draft.ts';

/** Smallest plates, one on each side: 1.25 kg or 2.5 lb (common practice, no source). */
export const usualStepKg: Record<BodyMassUnit, number> = { kg: 2.5, lb: kgFromPounds(5) };

/** A load for reading and typing, without its unit: as exact as plates are. */
export function loadFigure(kg: number, unit: BodyMassUnit): string {
  return plain(bodyMassIn(kg, unit), 2);
}

/** A load with its unit: `102.5 kg`. */
export function formatLoad(kg: number, unit: BodyMassUnit): string {
  return `${loadFigure(kg, unit)} ${unit}`;
}

/** A load with its repetitions: `102.5 kg × 5`, `no load × 12`. */
export function formatSet(
  { loadKg, repetitions }: { loadKg: number; repetitions: number },
  unit: BodyMassUnit,
) {
  return `${loadKg === 0 ? 'no load' : formatLoad(loadKg, unit)} × ${repetitions}`;
}

/** A typed load in kg, 0 for a lift without one; a bare number is in `unit`. Undefined when unreadable or over the most. */
export function parseLoad(text: string, unit: BodyMassUnit): number | undefined {
  const kg = parseDecimal(text) === 0 ? 0 : parseBodyMass(text, unit);
  return isWithin(kg, limits.loadKg) ? kg : undefined;
}
