import type { ParseArgsOptionsConfig } from 'node:util';
import type { StorePlace } from '../store/open.ts';

export interface Given {
  /** Options by their long name. */
  values: Readonly<Record<string, unknown>>;
  positionals: readonly string[];
}

export interface Command {
  name: string;
  /** What follows the name: `[FILE]`. */
  operands: string;
  /** How many operands there may be. */
  mostOperands: number;
  options: ParseArgsOptionsConfig;
  /** Examples first, then what else there is to know. */
  help: string;
  /** Where its store is, when that is not the athlete's own. */
  place?(given: Given): StorePlace;
  run(given: Given): Promise<void>;
}

/** An end that is the caller's to mend. Exit code 2: the command was not understood; 1: it could not be done. */
export class CommandTrouble extends Error {
  readonly exitCode: 1 | 2;

  constructor(message: string, exitCode: 1 | 2 = 1) {
    super(message);
    this.name = 'CommandTrouble';
    this.exitCode = exitCode;
  }
}

/** Data, for a person or the next program. */
export function say(line: string): void {
  process.stdout.write(`${line}\n`);
}

/** What a person should know, kept out of the data. */
export function note(line: string): void {
  process.stderr.write(`${line}\n`);
}

/** Text that someone else typed can neither steer a terminal nor begin another column or line. */
export function printable(text: string): string {
  return text.replace(/\p{C}/gu, '\ufffd');
}
