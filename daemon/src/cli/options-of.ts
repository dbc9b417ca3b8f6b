import type { Command, Given } from './command.ts';
import { optionsFor, settings } from './settings.ts';

/** Options that lead another command to the store that this one was about. */
export function optionsOf({ place = settings }: Command, given: Given): string {
  return optionsFor(place(given));
}
