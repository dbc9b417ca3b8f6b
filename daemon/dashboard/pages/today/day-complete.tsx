import type { DayView } from '@platewright/core/views/types.ts';
import { edit } from '../../api/edits.ts';
import { Choice } from '../../forms/choice.tsx';
import { useNotice } from '../../state/notice.tsx';

/** Whether all that was eaten is in the log: the weekly call trusts only whole days. */
export function DayComplete({ day }: { day: DayView }) {
  const { act } = useNotice();
  const value = day.complete === null ? '' : day.complete ? 'yes' : 'no';
  return (
    <Choice
      legend="Is everything eaten in the log?"
      value={value}
      options={[
        { value: 'yes', label: 'All of it' },
        { value: 'no', label: 'Not all' },
      ]}
      onChoice={(choice) =>
        void act(
          [
            edit('day', day.athlete, `day-${day.date}`, {
              date: day.date,
              complete: choice === 'yes',
            }),
          ],
          choice === 'yes' ? 'This day counts as whole.' : 'This day counts as not all logged.',
        )
      }
      hint="The weekly call leans on whole days. Unsaid, it judges by the entries."
    />
  );
}
