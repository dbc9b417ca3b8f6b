import * as z from 'zod/mini';
import { get } from '../../api/request.ts';
import { Shown } from '../../shell/shown.tsx';
import { useAthlete } from '../../state/athlete.tsx';
import { useLoaded } from '../../state/use-view.ts';

const healthSchema = z.object({ ok: z.boolean() });

/** Whether the store answers, and how to look closer. */
export function StoreHealth() {
  const { session } = useAthlete();
  const loaded = useLoaded('health', () => get('health', healthSchema));
  return (
    <Shown loaded={loaded}>
      {(health) => (
        <>
          <dl class="facts">
            <div>
              <dt>State</dt>
              <dd>{health.ok ? 'answers, and takes changes' : 'answers, but takes no changes'}</dd>
            </div>
            <div>
              <dt>Holds</dt>
              <dd>{session.demo ? 'the invented season' : 'your records'}</dd>
            </div>
            <div>
              <dt>Name</dt>
              <dd class="break">{session.store}</dd>
            </div>
          </dl>
          <p class="hint">
            “npx platewright doctor” checks every record, “npx platewright backup” copies the store.
          </p>
        </>
      )}
    </Shown>
  );
}
