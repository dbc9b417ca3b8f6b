import type { Session } from '@platewright/core/protocol/devices.ts';
import { useEffect, useState } from 'preact/hooks';
import { connectLive } from './api/live.ts';
import { ProblemError } from './api/request.ts';
import { readSession } from './api/session.ts';
import { BodyPage } from './pages/body/body-page.tsx';
import { DevicesPage } from './pages/devices/devices-page.tsx';
import { LarderPage } from './pages/larder/larder-page.tsx';
import { LiftsPage } from './pages/lifts/lifts-page.tsx';
import { PairPage } from './pages/pair/pair-page.tsx';
import { PlanPage } from './pages/plan/plan-page.tsx';
import { RosterPage } from './pages/roster/roster-page.tsx';
import { SetUpPage } from './pages/set-up/set-up-page.tsx';
import { TodayPage } from './pages/today/today-page.tsx';
import { WeekPage } from './pages/week/week-page.tsx';
import { hrefOf, type Route, usePairingCode, useRoute } from './router.ts';
import { Header } from './shell/header.tsx';
import { NoticeBar } from './shell/notice-bar.tsx';
import { ProblemNote } from './shell/problem-note.tsx';
import { AthleteProvider } from './state/athlete.tsx';
import { NoticeProvider } from './state/notice.tsx';
import { useLoaded } from './state/use-view.ts';

/** The session comes first: without one the only page is Pair. */
export function App() {
  const loaded = useLoaded<Session | 'none'>('session', async () => {
    try {
      return await readSession();
    } catch (error) {
      if (error instanceof ProblemError && error.status === 401) return 'none';
      throw error;
    }
  });
  const { value, problem, reload } = loaded;
  // Whether a tab that stood open is still paired is looked at anew.
  const code = usePairingCode(() => void reload());
  if (value === 'none') return <PairPage key={code} code={code} paired={reload} />;
  if (value !== null) return <Paired session={value} reload={reload} />;
  return problem ? (
    <main class="page">
      <ProblemNote problem={problem} again={() => void reload()} />
    </main>
  ) : null;
}

/** Everything behind the pairing. */
function Paired({ session, reload }: { session: Session; reload: () => Promise<void> }) {
  const route = useRoute();
  const [chosen, setChosen] = useState('');
  useEffect(connectLive, []);
  const known = session.athletes.find(({ id }) => id === chosen) ?? session.athletes[0];
  return (
    <NoticeProvider>
      <AthleteProvider value={{ session, athlete: known?.id ?? '', choose: setChosen }}>
        <Header page={known ? route.page : null} />
        {known ? <Shown key={known.id} route={route} reload={reload} /> : <SetUpPage done={reload} />}
        <NoticeBar />
      </AthleteProvider>
    </NoticeProvider>
  );
}

function Shown({ route, reload }: { route: Route; reload: () => Promise<void> }) {
  switch (route.page) {
    case 'today':
      return <TodayPage date={route.rest} />;
    case 'larder':
      return <LarderPage />;
    case 'body':
      return <BodyPage />;
    case 'lifts':
      return <LiftsPage />;
    case 'week':
      return <WeekPage date={route.rest} />;
    case 'plan':
      return <PlanPage />;
    case 'roster':
      return <RosterPage />;
    case 'devices':
      return <DevicesPage />;
    case 'set-up':
      return (
        <SetUpPage
          done={async () => {
            await reload();
            location.hash = hrefOf('roster');
          }}
        />
      );
  }
}
