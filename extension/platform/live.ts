import { readPairing } from './pairing.ts';

/**
 * Calls back each time the daemon says that its log has grown, for as long as this page is open. Not by EventSource,
 * which can't carry a token. When the line breaks it stays broken: the worker's alarm goes on anyway.
 */
export function keepLive(grown: () => void): () => void {
  const closed = new AbortController();
  void listen(grown, closed.signal).catch(() => {});
  return () => closed.abort();
}

async function listen(grown: () => void, signal: AbortSignal): Promise<void> {
  const pairing = await readPairing();
  if (pairing === null) return;
  const response = await fetch(`${pairing.address}/v1/events`, {
    headers: { authorization: `Bearer ${pairing.token}` },
    signal,
  });
  if (!response.ok || response.body === null) return;
  for await (const text of response.body.pipeThrough(new TextDecoderStream())) {
    if (text.includes('event: changed')) grown();
  }
}
