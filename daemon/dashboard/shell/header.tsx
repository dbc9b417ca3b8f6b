import { useEffect, useState } from 'preact/hooks';
import { onLoss } from '../api/live.ts';
import { hrefOf, type Page } from '../router.ts';
import { useAthlete } from '../state/athlete.tsx';
import { DemoBanner } from './demo-banner.tsx';
import { Mark } from './mark.tsx';

interface Link {
  page: Page;
  name: string;
  /** Shown only where there are several athletes. */
  several?: true;
}

const links: readonly Link[] = [
  { page: 'today', name: 'Today' },
  { page: 'larder', name: 'Larder' },
  { page: 'body', name: 'Body' },
  { page: 'lifts', name: 'Lifts' },
  { page: 'week', name: 'Week' },
  { page: 'plan', name: 'Plan' },
  { page: 'roster', name: 'Roster', several: true },
  { page: 'devices', name: 'Devices' },
];

/** The head of every page: whose pages these are, and the way to the others. */
export function Header({ page }: { page: Page | null }) {
  const { session, athlete, choose } = useAthlete();
  const several = session.athletes.length > 1;
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
              {links
                .filter((link) => several || !link.several)
                .map((link) => (
                  <li key={link.page}>
                    <a href={hrefOf(link.page)} {...(link.page === page && { 'aria-current': 'page' })}>
                      {link.name}
                    </a>
                  </li>
                ))}
            </ul>
          </nav>
        )}
        {several && (
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
      {session.rights.access === 'read' && <p class="loss">This device may look, not write.</p>}
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
