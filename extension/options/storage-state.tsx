import { formatDecimal } from '@platewright/core/units/decimal.ts';
import { useState } from 'preact/hooks';
import { askWorker } from '../platform/messages.ts';
import type { OptionsState } from './read-options.ts';

/** What this browser holds, and how to erase it once it is unpaired. */
export function StorageState({ state }: { state: OptionsState }) {
  const { records, bytes, paired, choice, waiting, rejected } = state;
  const [sure, setSure] = useState(false);
  const unsent = waiting + rejected.length;
  return (
    <section>
      <h2>What this browser holds</h2>
      <p>
        {formatDecimal(records)} records
        {bytes !== null && `, ${formatDecimal(bytes / 1_000_000, 1)} MB`}. Removing the extension erases them
        here; what the daemon has stays there.
      </p>
      {!paired && choice === null && records > 0 && (
        <>
          {unsent > 0 && (
            <label class="check">
              <input
                type="checkbox"
                checked={sure}
                onChange={({ currentTarget }) => setSure(currentTarget.checked)}
              />
              Give up {unsent === 1 ? 'the change' : `the ${unsent} changes`} that no daemon has
            </label>
          )}
          <button
            type="button"
            class="button"
            disabled={unsent > 0 && !sure}
            onClick={() => void askWorker('erase', null)}
          >
            Erase what this browser holds
          </button>
        </>
      )}
    </section>
  );
}
