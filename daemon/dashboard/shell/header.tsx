import { useEffect, useState } from 'preact/hooks';
import { onLoss } from '../api/live.ts';
import { hrefOf, type Page, pages } from '../router.ts';
import { useAthlete } from '../state/athlete.tsx';
import { DemoBanner } from './demo-banner.tsx';
import { Mark } from './mark.tsx';

const names: Record<Page, string> = {
  today: 'Today',
  larder: 'Larder',
  body: 'Body',
  week: 'Week',
  plan: 'Plan',
  devices: 'Devices',
};

/** The head of every page: whose pages these are, and the way to the others. */
export function Header({ page, choose }: { page: Page | null; choose: (athlete: string) => void }) {
  const { session, athlete } = useAthlete();
  return (
    <header class="head">
      <button
        type="button"
        class="skip button small"
        onClick={() => document.getElementById('main')?.focus()}
      >
        Skip to the page
      </button>
      {session.demo && <DemoBanner />}
      <div class="head-row">
        <span class="brand">
          <Mark /> Platewright
        </span>
        {page && (
          <nav aria-label="Pages">
            <ul class="nav">
              {pages.map((name) => (
                <li key={name}>
                  <a href={hrefOf(name)} {...(name === page && { 'aria-current': 'page' })}>
                    {names[name]}
                  </a>
                </li>
              ))}
            </ul>
          </nav>
        )}
        {session.athletes.length > 1 && (
          <select
            class="input athlete-choice"
            aria-label="Athlete"
            value={athlete}
            onChange={(event) => choose(event.currentTarget.value)}
          >
            {session.athletes.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        )}
      </div>
      <Loss />
    </header>
  );
}

/** One quiet line while the daemon can't be heard. */
function Loss() {
  const [lost, setLost] = useState(false);
  useEffect(() => onLoss(setLost), []);
  return (
    <div role="status">
      {lost && (
        <p class="loss">
          The daemon can’t be heard. What you see may be old; this page connects again by itself.
        </p>
      )}
    </div>
  );
}
