import type { Rights } from '@platewright/core/protocol/devices.ts';
import { isOwner, maySee, whyNoWrite } from '@platewright/core/protocol/rights.ts';
import { ProblemError } from './problem.ts';

/** Throws ProblemError unless a device may write for an athlete. */
export function demandWrite(rights: Rights, athlete: string): void {
  const reason = whyNoWrite(rights, athlete);
  if (reason !== null) throw noRight(reason);
}

/**
 * Whose records to read: the athlete asked for, else the only one that a device may see; undefined for all athletes.
 * Throws ProblemError for an athlete that it may not see, whether there is such an athlete or not.
 */
export function athleteToRead(rights: Rights, asked: string | undefined): string | undefined {
  if (asked === undefined) return rights.athlete ?? undefined;
  if (!maySee(rights, asked)) throw noRight('This device may not see that athlete.');
  return asked;
}

/** Throws ProblemError unless a device is an owner's; only they manage devices. */
export function demandOwner(rights: Rights): void {
  if (!isOwner(rights))
    throw noRight('Only a device of the owner, which may write for all athletes, manages devices.');
}

function noRight(detail: string): ProblemError {
  return new ProblemError(403, 'no-right', { detail });
}
