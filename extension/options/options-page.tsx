import { useEffect, useState } from 'preact/hooks';
import { JoinChoice } from '../pairing/join-choice.tsx';
import { PairForm } from '../pairing/pair-form.tsx';
import { askHostPermission } from '../platform/host-permission.ts';
import { askWorker } from '../platform/messages.ts';
import { begunPairing } from '../platform/open-options.ts';
import { onReplicaChange, reader } from '../platform/replica.ts';
import { fillIfThrownAway } from '../platform/thrown-away.ts';
import { Unreadable } from '../platform/unreadable.tsx';
import { AthleteChoice } from './athlete-choice.tsx';
import { changeWords } from './change-draft.ts';
import { type OptionsState, readOptions } from './read-options.ts';
import { RejectedChange } from './rejected-change.tsx';
import { StorageState } from './storage-state.tsx';

interface Unread {
  unreadable: string;
}

export function OptionsPage() {
  const [state, setState] = useState<OptionsState | Unread | null>(null);
  useEffect(() => {
    const read = () =>
      void readOptions(reader).then(setState, (error) => setState({ unreadable: String(error) }));
    read();
    return onReplicaChange(read);
  }, []);
  const unpaired = state !== null && 'paired' in state && !state.paired;
  useEffect(() => {
    if (unpaired) void fillIfThrownAway();
  }, [unpaired]);
  if (state === null) return null;
  if ('unreadable' in state) {
    return (
      <main class="options-page">
        <Unreadable reason={state.unreadable} />
      </main>
    );
  }
  return (
    <main class="options-page">
      <h1>Platewright in this browser</h1>
      <Pairing state={state} />
      <AthleteChoice session={state.session} chosen={state.athlete} />
      {!isBlank(state) && (
        <>
          <Outbox state={state} />
          <StorageState state={state} />
        </>
      )}
    </main>
  );
}

/** Nothing was ever paired or logged here: there is one thing to do. */
function isBlank({ paired, choice, records, waiting, rejected }: OptionsState): boolean {
  return !paired && choice === null && records + waiting + rejected.length === 0;
}

function Pairing({ state }: { state: OptionsState }) {
  const { address, paired, check, access, choice, session, sync } = state;
  if (choice !== null) {
    return (
      <section>
        <h2>Pairing</h2>
        <JoinChoice choice={choice} />
      </section>
    );
  }
  const lost = sync?.state === 'unpaired';
  return (
    <section>
      <h2>Pairing</h2>
      {paired && (
        <p>
          Paired with the daemon at <a href={address ?? ''}>{address}</a>
          {session?.demo && ', which serves an invented season'}.{' '}
          {check !== null && `This device’s check is ${check}; the daemon shows the same. `}
          {sync !== null && sync.state !== 'done' && <span class="wrong">{sync.detail}</span>}
        </p>
      )}
      {paired && access === 'read' && (
        <p>
          It may look, not write. To log here, unpair it and pair it again with a code that lets it write.
        </p>
      )}
      {(!paired || lost) && <PairForm begun={begunPairing()} allow={allowHost} />}
      {paired && (
        <div class="buttons">
          <button type="button" class="button" onClick={() => void askWorker('sync', null)}>
            Sync now
          </button>
          <button type="button" class="button" onClick={() => void askWorker('unpair', null)}>
            Unpair
          </button>
        </div>
      )}
    </section>
  );
}

async function allowHost(pattern: string): Promise<string | null> {
  return (await askHostPermission(pattern))
    ? null
    : 'Without that permission this browser can’t reach the daemon. Press Pair again and allow it.';
}

function Outbox({ state }: { state: OptionsState }) {
  const { rejected, listed, waiting } = state;
  return (
    <section>
      <h2>Changes that the daemon does not have</h2>
      {rejected.length + waiting === 0 && (
        <p class="soft">None: all that was logged here is with the daemon.</p>
      )}
      {rejected.length > 0 && (
        <ul class="changes">
          {rejected.map((row) => (
            <RejectedChange key={row.order} row={row} />
          ))}
        </ul>
      )}
      {waiting > 0 && (
        <>
          <p>{waiting === 1 ? '1 change waits' : `${waiting} changes wait`} to be sent.</p>
          <ol class="changes">
            {listed.map(({ order, change }) => (
              <li key={order} class="soft small">
                {changeWords(change.kind, change.fields)}
              </li>
            ))}
          </ol>
          {waiting > listed.length && <p class="soft small">… and {waiting - listed.length} more.</p>}
        </>
      )}
    </section>
  );
}
