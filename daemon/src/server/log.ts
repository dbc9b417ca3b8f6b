import { basename } from 'node:path';

/** From what must be mended to what each request did. */
export const LOG_LEVELS = ['error', 'warn', 'info', 'debug'] as const;
export type LogLevel = (typeof LOG_LEVELS)[number];

type Facts = Readonly<Record<string, string | number>>;

/** Takes words of this program and numbers only, never what a person typed or an address that tells who it was. */
export type Log = (level: LogLevel, event: string, facts?: Facts | (() => Facts)) => void;

export const silent: Log = () => undefined;

/** A log of single lines: the instant, the level, what happened, then `name=value` for each fact. */
export function createLog(least: LogLevel, write: (line: string) => void, now: () => number): Log {
  const most = LOG_LEVELS.indexOf(least);
  return (level, event, facts = {}) => {
    if (LOG_LEVELS.indexOf(level) > most) return;
    const told = typeof facts === 'function' ? facts() : facts;
    const words = Object.entries(told).map(([name, value]) => `${name}=${value}`);
    write([new Date(now()).toISOString(), level, event, ...words].join(' '));
  };
}

/** Where in the program an error came from. Its message is left out, because it may quote what was sent. */
export function faultFacts(error: unknown): Facts {
  if (!(error instanceof Error)) return { kind: typeof error };
  const frames = [...(error.stack ?? '').matchAll(/\(?([^\s(]+:\d+):\d+\)?$/gm)].map(([, at]) =>
    basename(at ?? ''),
  );
  const code = 'code' in error ? { code: String(error.code).replace(/\W/g, '') } : {};
  return { kind: error.name.replace(/\W/g, ''), ...code, at: frames.slice(0, 6).join('<') };
}
