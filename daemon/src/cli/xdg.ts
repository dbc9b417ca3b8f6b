import { homedir } from 'node:os';
import { isAbsolute, join } from 'node:path';

/** A folder of the XDG Base Directory Specification, which tells to pass over one that is not absolute. */
export function xdg(variable: string, fallback: string): string {
  const named = process.env[variable];
  return named !== undefined && isAbsolute(named) ? named : join(homedir(), fallback);
}
