import { formatDay } from '@platewright/core/ui/format-date.ts';
import { gramsFigure } from '@platewright/core/ui/number.ts';
import type { ComponentChildren } from 'preact';
import { openOptions } from '../../platform/open-options.ts';
import type { DayState } from '../state/read-popup.ts';

/** The mark in force with the weekly call, and what the daemon does not have yet. */
export function Foot({ state, children }: { state: DayState; children?: ComponentChildren }) {
  return (
    <footer class="foot small">
      <CallLine state={state} />
      <SyncLine state={state} />
      {children}
    </footer>
  );
}

function CallLine({ state }: { state: DayState }) {
  const { day, week, session, athlete, today } = state;
  const mark = `Carbohydrate mark ${gramsFigure(day.targets.carbohydrate.markG)} g`;
  const call = week?.athlete === athlete.id && week.date === today ? week : null;
  const link = session === null ? null : `${session.address}/#/week`;
  return (
    <p class="foot-call">
      <span>{mark}</span>
      {day.cautions.length > 0 && session !== null && (
        <a
          class="wrong"
          href={session.address}
          target="_blank"
          rel="noreferrer"
          aria-label="caution: read it on the dashboard"
        >
          caution
        </a>
      )}
      {call !== null && link !== null && (
        <a href={link} target="_blank" rel="noreferrer">
          {callWords(call, today)}
        </a>
      )}
    </p>
  );
}

const moves = { up: 'up to', down: 'down to', hold: 'hold at' } as const;

function callWords(call: NonNullable<DayState['week']>, today: string): string {
  if (call.dueOn > today) return `next weekly call ${formatDay(call.dueOn)}`;
  if (call.verdict === null || call.verdict === 'not-enough' || call.proposedG === null) {
    return 'weekly call: not enough to say';
  }
  return `weekly call: ${moves[call.verdict]} ${gramsFigure(call.proposedG)} g, decide`;
}

/** Quiet while all is well. */
function SyncLine({ state }: { state: DayState }) {
  const { waiting, rejected, sync } = state;
  const trouble = sync !== null && sync.state !== 'done';
  if (rejected === 0 && !(trouble && (waiting > 0 || sync.state !== 'offline'))) return null;
  return (
    <p class="foot-sync" role="status">
      {trouble && waiting > 0 && <span>{changes(waiting)} for the daemon.</span>}
      {trouble && sync.state !== 'offline' && <span class="wrong">{sync.detail}</span>}
      {rejected > 0 && (
        <button type="button" class="link" onClick={openOptions}>
          {rejected === 1 ? '1 change was refused' : `${rejected} changes were refused`}: see why
        </button>
      )}
      {trouble && sync.state === 'unpaired' && (
        <button type="button" class="link" onClick={openOptions}>
          Pair again
        </button>
      )}
    </p>
  );
}

function changes(count: number): string {
  return count === 1 ? '1 change waits' : `${count} changes wait`;
}
