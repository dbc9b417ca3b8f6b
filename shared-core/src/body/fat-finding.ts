import type { Person } from '../maintenance/start-estimate.ts';

/** The sex whose equation is meant. */
export type Sex = Person['sex'];

/** Body fat as a method found it, % of body mass, with the standard error the method was published with. */
export interface FatFinding {
  percent: number;
  errorPercent: number;
  /** The method with its source, for the screen. */
  method: string;
}

/** Body fat in % from body density in kg/L. Siri WE 1961: 495/D − 450. */
export function siriPercent(density: number): number {
  return 495 / density - 450;
}

/** What an error of density in kg/L means in % of body mass: the slope of Siri's equation. */
export function siriErrorPercent(density: number, densityError: number): number {
  return (495 / density ** 2) * densityError;
}
