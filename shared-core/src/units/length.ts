import { formatDecimal, formatSigned, parseDecimal } from './decimal.ts';
import type { BodyMassUnit } from './mass.ts';
import { roundTo } from './round.ts';

/** Centimetres in one inch, exact (UCUM [in_i]; international yard of 1959). */
export const cmPerInch = 2.54;

const inchesPerFoot = 12;

/** The unit in which an athlete reads and types lengths. */
export type LengthUnit = 'cm' | 'in';

/** Who reads pounds reads inches. */
export function lengthUnit(massUnit: BodyMassUnit): LengthUnit {
  return massUnit === 'kg' ? 'cm' : 'in';
}

/** Height for reading, to the centimetre or the inch: `178 cm`, `5 ft 10 in`. */
export function formatHeight(cm: number, unit: LengthUnit): string {
  if (unit === 'cm') return `${formatDecimal(cm)} cm`;
  const inches = Math.round(cm / cmPerInch);
  return `${Math.floor(inches / inchesPerFoot)} ft ${inches % inchesPerFoot} in`;
}

/** A circumference for reading: to 1 mm in cm, to a tenth in inches. */
export function formatTape(cm: number, unit: LengthUnit): string {
  return `${formatDecimal(unit === 'cm' ? cm : cm / cmPerInch, 1)} ${unit}`;
}

/** A change of a circumference with its sign, to 1 mm in cm, to a twentieth of an inch, which is about as fine. */
export function formatTapeChange(cm: number, unit: LengthUnit): string {
  return unit === 'cm' ? `${formatSigned(cm, 1)} cm` : `${formatSigned(roundTo(cm / cmPerInch, 0.05), 2)} in`;
}

/**
 * Typed length in cm: `178`, `178 cm`, `70 in`, `70"`, `5'10"`, `5 ft 10 in`. A bare number is in `unit`; undefined
 * when unreadable or not positive.
 */
export function parseLength(text: string, unit: LengthUnit): number | undefined {
  const cm = feetAndInches(text) ?? singleUnit(text, unit);
  return cm !== undefined && cm > 0 ? cm : undefined;
}

function feetAndInches(text: string): number | undefined {
  const match = /^\s*(\d+)\s*(?:ft|feet|['′’])\s*(?:([\d.,]+)\s*(?:in|["″”])?)?\s*$/i.exec(text);
  if (!match) return undefined;
  const inches = match[2] === undefined ? 0 : parseDecimal(match[2]);
  return inches === undefined ? undefined : (Number(match[1]) * inchesPerFoot + inches) * cmPerInch;
}

function singleUnit(text: string, unit: LengthUnit): number | undefined {
  const match = /^\s*([\d.,]+)\s*(cm|m|in|["″”])?\s*$/i.exec(text);
  const value = parseDecimal(match?.[1] ?? '');
  if (value === undefined) return undefined;
  switch ((match?.[2] ?? unit).toLowerCase()) {
    case 'cm':
      return value;
    case 'm':
      return value * 100;
    default:
      return value * cmPerInch;
  }
}
