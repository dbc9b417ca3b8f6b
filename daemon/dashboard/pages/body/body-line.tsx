import { addDays } from '@platewright/core/season/dates.ts';
import { BodyweightLine } from '@platewright/core/ui/bodyweight-line.tsx';
import { ChartKey } from '@platewright/core/ui/chart-key.tsx';
import type { BodyView } from '@platewright/core/views/body-types.ts';
import { useState } from 'preact/hooks';
import { Choice } from '../../forms/choice.tsx';

type Reach = '4' | '13' | '26' | 'all';

const reaches: readonly { value: Reach; label: string }[] = [
  { value: '4', label: '4 weeks' },
  { value: '13', label: '13 weeks' },
  { value: '26', label: '26 weeks' },
  { value: 'all', label: 'All' },
];

/** The bodyweight line, as far back as was chosen. */
export function BodyLine({ body }: { body: BodyView }) {
  const [reach, setReach] = useState<Reach>('13');
  const from = reach === 'all' ? '' : addDays(body.date, -7 * Number(reach));
  const points = body.points.filter((point) => point.date >= from);
  return (
    <>
      <Choice
        legend={<span class="unseen">How far back</span>}
        value={reach}
        options={reaches}
        onChoice={setReach}
      />
      <BodyweightLine
        points={points.length > 0 ? points : body.points}
        wedge={body.wedge}
        flags={body.flags}
        unit={body.units.mass}
      />
      <ChartKey
        signs={[
          { sign: 'mark', means: 'weigh-in; hollow when it counted in part or not at all' },
          { sign: 'line', means: 'bodyweight line and its 90 % interval' },
          { sign: 'wedge', means: 'pace band' },
          { sign: 'flag', means: 'weekly call: up, down or hold; hollow when declined' },
        ]}
      />
    </>
  );
}
