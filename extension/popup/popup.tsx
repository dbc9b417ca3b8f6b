import { useEffect, useState } from 'preact/hooks';
import { keepLive } from '../platform/live.ts';
import { askWorker } from '../platform/messages.ts';
import { fillIfThrownAway } from '../platform/thrown-away.ts';
import { Unreadable } from '../platform/unreadable.tsx';
import { DayScreen } from './day/day-screen.tsx';
import { LookScreen } from './day/look-screen.tsx';
import { FetchingScreen } from './fetching-screen.tsx';
import { NoAthleteScreen } from './no-athlete-screen.tsx';
import { usePopup } from './state/use-popup.ts';
import { UnpairedScreen } from './unpaired-screen.tsx';

export function Popup() {
  const [date, setDate] = useState<string | null>(null);
  const state = usePopup(date);
  const paired = state !== null && state.kind !== 'unpaired';
  const unpaired = state?.kind === 'unpaired';
  useEffect(() => {
    if (unpaired) void fillIfThrownAway();
  }, [unpaired]);
  useEffect(() => {
    if (!paired) return;
    // The first thing the daemon says is where its log stands, so a page that opens syncs at once.
    return keepLive(() => void askWorker('sync', null));
  }, [paired]);
  switch (state?.kind) {
    case 'unpaired':
      return <UnpairedScreen choice={state.choice} />;
    case 'unreadable':
      return (
        <main class="alone">
          <Unreadable reason={state.reason} />
        </main>
      );
    case 'fetching':
      return <FetchingScreen {...state} />;
    case 'no-athlete':
      return <NoAthleteScreen address={state.address} />;
    default:
      return state === null || state.mayWrite ? (
        <DayScreen state={state} show={setDate} />
      ) : (
        <LookScreen state={state} show={setDate} />
      );
  }
}
