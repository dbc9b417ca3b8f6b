import type { LiftsView, LiftView } from '@platewright/core/views/lifts-types.ts';
import { useState } from 'preact/hooks';
import { edit } from '../../api/edits.ts';
import { Remove } from '../../shell/remove.tsx';
import { RowAction } from '../../shell/row-action.tsx';
import { useNotice } from '../../state/notice.tsx';
import { LiftFacts } from './lift-facts.tsx';
import { LiftForm } from './lift-form.tsx';
import { RepMaxChart } from './rep-max-chart.tsx';
import { SetTable } from './set-table.tsx';

/** Charts are for key lifts, from two dates on. */
export function hasChart({ key, points }: LiftView): boolean {
  return key && points.length > 1;
}

interface LiftCardProps {
  lift: LiftView;
  view: LiftsView;
  /** Left end of the time axis of the charts. */
  from: string;
}

/** One lift: its figures, the chart of a key lift, its sets, and what can be done with it. */
export function LiftCard({ lift, view, from }: LiftCardProps) {
  const [editing, setEditing] = useState(false);
  if (editing) {
    return (
      <li class="lift">
        <LiftForm view={view} lift={lift} close={() => setEditing(false)} />
      </li>
    );
  }
  const { name, sets } = lift;
  return (
    <li class="lift">
      <div class="lift-head">
        <h3>{name}</h3>
        <LiftActions lift={lift} athlete={view.athlete} change={() => setEditing(true)} />
      </div>
      {sets.length === 0 ? (
        <p class="soft">No set yet.</p>
      ) : (
        <>
          <LiftFacts lift={lift} unit={view.units.mass} />
          {hasChart(lift) && <RepMaxChart lift={lift} from={from} to={view.date} unit={view.units.mass} />}
          <details>
            <summary>
              {sets.length === 1 ? '1 set' : `${sets.length} sets`}
              <span class="unseen"> of {name}</span>
            </summary>
            <SetTable lift={lift} view={view} />
          </details>
        </>
      )}
    </li>
  );
}

interface LiftActionsProps {
  lift: LiftView;
  athlete: string;
  change: () => void;
}

function LiftActions({ lift: { id, name, key }, athlete, change }: LiftActionsProps) {
  const { act } = useNotice();
  return (
    <span class="buttons">
      <RowAction name="Edit" what={name} run={change} />
      <RowAction
        name={key ? 'Not a key lift' : 'Make it a key lift'}
        what={name}
        run={() =>
          void act(
            [edit('lift', athlete, id, { key: !key })],
            key ? `${name} is no longer a key lift.` : `${name} is a key lift.`,
            [edit('lift', athlete, id, { key })],
          )
        }
      />
      <Remove kind="lift" id={id} what={name} />
    </span>
  );
}
