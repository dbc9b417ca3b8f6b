import type { Device } from '@platewright/core/protocol/devices.ts';
import { revokeDevice } from '../../api/session.ts';
import { ProblemNote } from '../../shell/problem-note.tsx';
import { useAthlete } from '../../state/athlete.tsx';
import { useSubmit } from '../../state/use-submit.ts';
import { formatInstant } from './format-instant.ts';
import { rightsWords } from './rights-words.ts';

/** One row for each device. Taking a key back loses nothing: the device is paired again with a new code. */
export function DeviceTable({
  devices,
  reload,
}: {
  devices: readonly Device[];
  reload: () => Promise<void>;
}) {
  const { busy, problem, run } = useSubmit({ typed: false });
  const { session } = useAthlete();
  return (
    <>
      {problem && <ProblemNote problem={problem} />}
      <ul class="rows">
        {devices.map((device) => (
          <li key={device.id} class="device">
            <div>
              <b>{device.name}</b>
              {device.current && <span class="aim small"> this one</span>}
              <p class="soft small">
                {device.kind === 'extension' ? 'Extension' : 'Dashboard'},{' '}
                {rightsWords(device.rights, session.athletes)}; check {device.check}
              </p>
              <p class="soft small">
                Paired {formatInstant(device.pairedAt)},{' '}
                {device.lastSeenAt === null
                  ? 'never seen since'
                  : `last seen ${formatInstant(device.lastSeenAt)}`}
              </p>
            </div>
            {device.revoked ? (
              <span class="soft small">taken back</span>
            ) : (
              <button
                type="button"
                class="button small"
                disabled={busy}
                onClick={() =>
                  void run(async () => {
                    await revokeDevice(device.id);
                    if (device.current) location.reload();
                    else await reload();
                  })
                }
              >
                Take the key back
                <span class="unseen"> of {device.name}</span>
              </button>
            )}
          </li>
        ))}
      </ul>
    </>
  );
}
