import { expect } from 'vitest';
import { type Daemon, pairExtension, platewright } from '../faults/daemon-process.ts';

/** The changes of the log of a daemon whose folder is this; it must fit in one page. */
export async function loggedChanges(
  daemon: Daemon,
  folder: string,
): Promise<{ id: string; record: string }[]> {
  const code = platewright(folder, ['pair']).stdout.trim();
  const headers = await pairExtension({ ...daemon, code });
  const answer = await fetch(`${daemon.url}/v1/pull`, { headers });
  const { changes, more }: { changes: { id: string; record: string }[]; more: boolean } = await answer.json();
  expect(more).toBe(false);
  return changes;
}
