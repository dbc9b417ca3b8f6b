import { isOwner } from '@platewright/core/protocol/rights.ts';
import type { RosterRow } from '@platewright/core/views/roster.ts';
import { useState } from 'preact/hooks';
import { readRoster } from '../../api/views.ts';
import { hrefOf } from '../../router.ts';
import { Page } from '../../shell/page.tsx';
import { Shown } from '../../shell/shown.tsx';
import { useAthlete } from '../../state/athlete.tsx';
import { useLoaded } from '../../state/use-view.ts';
import { RosterTable } from './roster-table.tsx';

/** All athletes in sight of this device: phase, pace, and whose weekly call is due. */
export function RosterPage() {
  const { session } = useAthlete();
  const [parts, setParts] = useState(1);
  const loaded = useLoaded(`roster ${parts}`, () => readParts(parts));
  return (
    <Page
      title="Roster"
      lead={loaded.value && lead(loaded.value.rows)}
      aside={
        isOwner(session.rights) && (
          <a class="button small" href={hrefOf('set-up')}>
            Set up an athlete
          </a>
        )
      }
    >
      <Shown loaded={loaded}>
        {({ rows, more }) => (
          <>
            <RosterTable rows={rows} />
            {more && (
              <button type="button" class="button" onClick={() => setParts(parts + 1)}>
                Show more
              </button>
            )}
          </>
        )}
      </Shown>
    </Page>
  );
}

/** So many parts of the roster, one after the other. */
async function readParts(count: number): Promise<{ rows: readonly RosterRow[]; more: boolean }> {
  const rows: RosterRow[] = [];
  for (let part = 0; part < count; part++) {
    const next = await readRoster(rows.at(-1)?.athlete);
    rows.push(...next.rows);
    if (!next.more) return { rows, more: false };
  }
  return { rows, more: true };
}

function lead(rows: readonly RosterRow[]): string {
  const due = rows.filter((row) => row.due).length;
  if (due === 0) return 'No weekly call is due.';
  return due === 1 ? 'One weekly call is due.' : `${due} weekly calls are due.`;
}
