import { readPairing } from './pairing.ts';

/** How long to wait before a line that broke is tried again. */
const RETRY_MS = 3000;

/**
 * Calls back each time the daemon says that its log has grown, for as long as this page is open. Not by EventSource,
 * which can't carry a token.
 */
export function keepLive(grown: () => void): () => void {
  const closed = new AbortController();
  const keep = async () => {
    while (!closed.signal.aborted) {
      await listen(grown, closed.signal).catch(() => {});
      await new Promise((resolve) => setTimeout(resolve, RETRY_MS));
    }
  };
  void keep();
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
