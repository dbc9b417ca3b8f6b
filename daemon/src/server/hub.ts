export type Hub = ReturnType<typeof createHub>;

/** Tells open event streams that the log has grown. A stream reads `seq` when it wakes, so none can fall behind or pile up. */
export function createHub(firstSeq: number) {
  let seq = firstSeq;
  let closed = false;
  const sleepers = new Set<() => void>();
  const wake = () => {
    for (const rouse of [...sleepers]) rouse();
  };

  return {
    seq: () => seq,
    closed: () => closed,
    streams: () => sleepers.size,
    wake,

    changed(newSeq: number): void {
      if (newSeq <= seq) return;
      seq = newSeq;
      wake();
    },

    close(): void {
      closed = true;
      wake();
    },

    /** Ends when the log grows, the hub wakes or closes, `signal` aborts, or after `ms`. */
    async sleep(ms: number, signal: AbortSignal): Promise<void> {
      if (closed || signal.aborted) return;
      await new Promise<void>((resolve) => {
        const rouse = () => {
          clearTimeout(timer);
          sleepers.delete(rouse);
          signal.removeEventListener('abort', rouse);
          resolve();
        };
        const timer = setTimeout(rouse, ms);
        sleepers.add(rouse);
        signal.addEventListener('abort', rouse);
      });
    },
  };
}
