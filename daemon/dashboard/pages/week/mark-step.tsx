import type { WeeklyCall } from '@platewright/core/call/output.ts';
import { gramsFigure } from '@platewright/core/ui/number.ts';
import { formatSigned } from '@platewright/core/units/decimal.ts';
import type { WeekView } from '@platewright/core/views/week-types.ts';

const words: Record<WeeklyCall['verdict'], string> = {
  up: 'Up',
  down: 'Down',
  hold: 'Hold',
  'not-enough': 'Not enough to say',
};

/** The verdict and what it does to the mark. */
export function MarkStep({ call, band }: { call: WeeklyCall; band: WeekView['carbohydrateBand'] }) {
  const step = call.carbohydrateG - call.markInForceG;
  return (
    <p class="mark-step">
      <span class="verdict">{words[call.verdict]}</span>
      <span>
        {step === 0 ? (
          <>
            <span class="figure">{gramsFigure(call.markInForceG)}</span> g carbohydrate
          </>
        ) : (
          <>
            <span class="soft">{gramsFigure(call.markInForceG)}</span>
            <span class="unseen"> to</span>
            <span aria-hidden="true"> → </span>
            <span class="figure aim">{gramsFigure(call.carbohydrateG)}</span> g carbohydrate,{' '}
            {formatSigned(step, 0)} g
          </>
        )}
      </span>
      <span class="soft small">
        band then {gramsFigure(band.lowG)} to {gramsFigure(band.highG)} g
      </span>
    </p>
  );
}
