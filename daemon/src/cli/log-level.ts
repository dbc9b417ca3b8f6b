import { createLog, LOG_LEVELS, type Log } from '../server/log.ts';
import { CommandTrouble, type Given, note } from './command.ts';
import { environment, text } from './settings.ts';

export const logOption = { 'log-level': { type: 'string' } } as const;

/** The log that was asked for, on the error output, where a service manager keeps it. */
export function chosenLog({ values }: Given): Log {
  const asked = text(values['log-level']) ?? environment('PLATEWRIGHT_LOG_LEVEL') ?? 'warn';
  const level = LOG_LEVELS.find((known) => known === asked);
  if (level !== undefined) return createLog(level, note, Date.now);
  throw new CommandTrouble(`A log level is one of ${LOG_LEVELS.join(', ')}, not “${asked}”.`, 2);
}
