import type { Session } from '@platewright/core/protocol/devices.ts';
import { createContext } from 'preact';
import { useContext } from 'preact/hooks';

interface AthleteState {
  session: Session;
  /** Id of the athlete whose pages are shown. */
  athlete: string;
  /** Shows another athlete's pages. */
  choose: (athlete: string) => void;
}

const AthleteContext = createContext<AthleteState | null>(null);

export const AthleteProvider = AthleteContext.Provider;

/** The session and the athlete whose pages are shown. */
export function useAthlete(): AthleteState {
  const state = useContext(AthleteContext);
  if (!state) throw new Error('a page outside the session');
  return state;
}

/** Whether this device may change what it shows. Before it is paired there is nothing that it may not. */
export function useMayWrite(): boolean {
  return useContext(AthleteContext)?.session.rights.access !== 'read';
}
