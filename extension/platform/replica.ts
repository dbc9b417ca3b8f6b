import { indexedDbReader } from '../replica/reader.ts';

const channel = new BroadcastChannel('platewright');
const own = new Set<() => void>();

/** Reads the one replica of this browser. */
export const reader = indexedDbReader();

/** Tells every page and the worker, this one too, that what they show may be out of date. */
export function announceChange(): void {
  channel.postMessage('changed');
  for (const listener of own) listener();
}

/** Calls back when the replica has changed, here or elsewhere. Returns how to stop it. */
export function onReplicaChange(listener: () => void): () => void {
  own.add(listener);
  channel.addEventListener('message', listener);
  return () => {
    own.delete(listener);
    channel.removeEventListener('message', listener);
  };
}
