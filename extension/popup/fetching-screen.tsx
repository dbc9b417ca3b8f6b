import type { PopupState } from './state/read-popup.ts';

/** Paired, and the records are not here yet; or no longer, because the browser threw them away. */
export function FetchingScreen({ lost, sync, waiting }: Extract<PopupState, { kind: 'fetching' }>) {
  return (
    <main class="alone">
      <h1>Fetching your records</h1>
      {lost && (
        <p>
          This browser lost its copy, as can happen when it is ended in the middle of writing. The daemon has
          what it was sent.
        </p>
      )}
      {waiting > 0 && <p>{waiting === 1 ? '1 change waits' : `${waiting} changes wait`} here to be sent.</p>}
      {sync !== null && sync.state !== 'done' && <p class="wrong">{sync.detail}</p>}
    </main>
  );
}
