import type { Rights } from '@platewright/core/protocol/devices.ts';
import { checksum, sameBytes } from './checksum.ts';
import { readRights } from './device-row.ts';
import { bytes, damaged, type Row, text, whole } from './rows.ts';
import type { CodeOutcome } from './store.ts';

/** Tries that all pairing codes together stand: 5 of 40 bits is a chance of 4.5e-12. */
export const CODE_TRIES = 5;

/** How long a pairing code is good, ms (ASVS 5.0, 6.5.5: ten minutes at the most). */
export const CODE_LIFE_MS = 10 * 60_000;
/** So far a clock that is set by the network steps back, ms (common practice, no source). */
const STEP_MS = 60_000;

/** Columns of a pairing code, in the order in which they are summed and written. */
export const CODE_COLUMNS = 'hash, expires_at, tries_left, athlete, access, checksum';

export interface CodeRow {
  hash: string;
  expiresAt: number;
  triesLeft: number;
  rights: Rights;
}

/** Values in the order of CODE_COLUMNS. */
export function codeValues({ hash, expiresAt, triesLeft, rights }: CodeRow) {
  const values = [hash, expiresAt, triesLeft, rights.athlete, rights.access] as const;
  return [...values, checksum(...values)] as const;
}

export function readCode(row: Row): CodeRow {
  const code: CodeRow = {
    hash: text(row, 'hash'),
    expiresAt: whole(row, 'expires_at'),
    triesLeft: whole(row, 'tries_left'),
    rights: readRights(row),
  };
  if (sameBytes(bytes(row, 'checksum'), codeValues(code)[5])) return code;
  throw damaged('a pairing code: its checksum does not match');
}

/** Those whose time is not over, and was not made long by a clock that was ahead. */
export function waitingAt(now: number, codes: readonly CodeRow[]): CodeRow[] {
  return codes.filter(({ expiresAt }) => expiresAt > now && expiresAt - now <= CODE_LIFE_MS + STEP_MS);
}

/** What a try at `now` comes to, and the codes that wait afterwards. */
export function tryCode(
  codes: readonly CodeRow[],
  hash: string | null,
  now: number,
): { outcome: CodeOutcome; left: CodeRow[] } {
  const good = waitingAt(now, codes);
  const right = good.find((code) => code.hash === hash);
  if (right !== undefined) return { outcome: right.rights, left: good.filter((code) => code !== right) };
  const left = good
    .map((code) => ({ ...code, triesLeft: code.triesLeft - 1 }))
    .filter(({ triesLeft }) => triesLeft > 0);
  return { outcome: good.length === 0 ? 'none' : 'wrong', left };
}
