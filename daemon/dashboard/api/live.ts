type Listener = () => void;

const listeners = new Set<Listener>();
const lossListeners = new Set<(lost: boolean) => void>();
let source: EventSource | null = null;
let pending: ReturnType<typeof setTimeout> | undefined;

function tellAll(): void {
  clearTimeout(pending);
  // A push of many changes gives many events: one refresh is enough.
  pending = setTimeout(() => {
    for (const listener of listeners) listener();
  }, 80);
}

function tellLoss(lost: boolean): void {
  for (const listener of lossListeners) listener(lost);
}

/** How often a page in sight is read anew though nothing changed: meals and days turn by the clock alone. */
const TURN_MS = 5 * 60_000;

/**
 * Listens to the daemon's `changed` events, and connects again whenever the line is lost. What stood open for hours is read
 * anew when it is looked at again, so that nothing is logged to yesterday under the heading of today.
 */
export function connectLive(): () => void {
  let retry: ReturnType<typeof setTimeout> | undefined;
  let wasLost = false;
  const open = () => {
    source = new EventSource(new URL('v1/events', document.baseURI));
    source.addEventListener('changed', tellAll);
    source.onopen = () => {
      tellLoss(false);
      if (wasLost) tellAll();
      wasLost = false;
    };
    source.onerror = () => {
      wasLost = true;
      tellLoss(true);
      // The browser tries again by itself unless the daemon refused the stream.
      if (source?.readyState !== EventSource.CLOSED) return;
      // Refused may mean that this device's key was taken back: reading anew will tell.
      tellAll();
      retry = setTimeout(open, 3000);
    };
  };
  const inSight = () => {
    if (document.visibilityState === 'visible') tellAll();
  };
  open();
  document.addEventListener('visibilitychange', inSight);
  const turn = setInterval(inSight, TURN_MS);
  return () => {
    document.removeEventListener('visibilitychange', inSight);
    clearInterval(turn);
    clearTimeout(retry);
    source?.close();
    source = null;
  };
}

export function onChanged(listener: Listener): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

export function onLoss(listener: (lost: boolean) => void): () => void {
  lossListeners.add(listener);
  return () => lossListeners.delete(listener);
}
