import { formatDayOfYear } from '@platewright/core/ui/format-date.ts';
import { type BodyMassUnit, formatBodyMass } from '@platewright/core/units/mass.ts';
import { Ledger } from '../../shell/ledger.tsx';
import type { PastedLine } from './read-weigh-ins.ts';

interface PastePreviewProps {
  lines: readonly PastedLine[];
  unit: BodyMassUnit;
  doubles: number;
}

/** How pasted lines were read: first what is wrong, line by line, then the first ones that are right. */
export function PastePreview({ lines, unit, doubles }: PastePreviewProps) {
  const wrong = lines.filter((line) => line.wrong !== null);
  const right = lines.filter((line) => line.wrong === null);
  return (
    <div class="stack" aria-live="polite">
      <p>
        {right.length} of {lines.length} lines can be read
        {doubles > 0 && `; ${doubles} of them are already here and are left out`}.
      </p>
      {wrong.length > 0 && (
        <ul class="rows">
          {wrong.slice(0, 20).map((line) => (
            <li key={line.line}>
              <span class="soft">Line {line.line}:</span> {line.text}
              <p class="wrong">{line.wrong}</p>
            </li>
          ))}
          {wrong.length > 20 && <li class="soft">and {wrong.length - 20} more</li>}
        </ul>
      )}
      {right.length > 0 && (
        <Ledger
          caption="How the first lines were read"
          rows={right.slice(0, 5)}
          keyOf={({ line }) => line}
          columns={[
            { head: 'Line', class: 'soft', cell: ({ line }) => line },
            { head: 'Date', cell: ({ date }) => formatDayOfYear(date) },
            { head: 'Body mass', class: 'number', cell: ({ kg }) => formatBodyMass(kg, unit) },
          ]}
        />
      )}
    </div>
  );
}
