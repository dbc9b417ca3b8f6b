import type { Rights, Session } from '@platewright/core/protocol/devices.ts';

/** What a device may do, in a few words. */
export function rightsWords({ athlete, access }: Rights, athletes: Session['athletes']): string {
  if (athlete === null)
    return access === 'write' ? 'an owner’s, may do everything' : 'may look at every athlete';
  const name = athletes.find(({ id }) => id === athlete)?.name ?? athlete;
  return access === 'write' ? `may write for ${name} alone` : `may look at ${name} alone`;
}
