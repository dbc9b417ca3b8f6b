import { MAX_PUSH } from '@platewright/core/protocol/sync.ts';
import { type Daemon, pairExtension, startDaemon } from '../faults/daemon-process.ts';
import { temporaryFolder } from '../support/folder.ts';
import { yearsOfChanges } from './years.ts';

/** A daemon process whose store holds years of records, and what a device of it says with each request. */
export interface FullDaemon {
  daemon: Daemon;
  headers: Record<string, string>;
  /** Address and a code that is still good, as a person types them to pair. */
  pairText: string;
  close(): Promise<void>;
}

/** Starts a daemon on a store of its own and pushes years of records into it, up to today. */
export async function fullDaemon(years: number, foods: number): Promise<FullDaemon> {
  const folder = temporaryFolder();
  const daemon = await startDaemon(folder.path);
  const headers = await pairExtension(daemon);
  const changes = yearsOfChanges(new Date().toISOString().slice(0, 10), years, foods);
  for (let start = 0; start < changes.length; start += MAX_PUSH) {
    const body = JSON.stringify({ changes: changes.slice(start, start + MAX_PUSH) });
    const answer = await fetch(`${daemon.url}/v1/push`, { method: 'POST', headers, body });
    if (!answer.ok) throw new Error(await answer.text());
  }
  // The code that was printed for the extension is used up by now; the dashboard's link holds another.
  const code = /#pair=(\S+)/.exec(daemon.lines.join(' '))?.[1];
  return {
    ...{ daemon, headers },
    pairText: `${daemon.url} ${code}`,
    async close() {
      await daemon.stop('SIGTERM');
      folder.remove();
    },
  };
}
