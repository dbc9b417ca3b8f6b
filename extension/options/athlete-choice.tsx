import { askWorker } from '../platform/messages.ts';
import type { Note } from '../replica/notes.ts';

/** For whom this browser logs, when the store holds several athletes. */
export function AthleteChoice({
  session,
  chosen,
}: {
  session: Note<'session'> | null;
  chosen: string | null;
}) {
  if (session === null || session.athletes.length < 2) return null;
  return (
    <section>
      <h2>Athlete</h2>
      <div class="choice" role="radiogroup" aria-label="This browser logs for">
        {session.athletes.map(({ id, name }) => (
          <label key={id}>
            <input
              type="radio"
              name="athlete"
              checked={id === chosen}
              onChange={() => void askWorker('choose', id)}
            />
            {name}
          </label>
        ))}
      </div>
    </section>
  );
}
