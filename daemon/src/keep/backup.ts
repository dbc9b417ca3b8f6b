import { join } from 'node:path';

export function backupFolder(dataFolder: string): string {
  return join(dataFolder, 'backups');
}

/** Where a backup of this instant goes unless told otherwise. */
export function backupPath(dataFolder: string, nowMs: number): string {
  const stamp = new Date(nowMs).toISOString().slice(0, 19).replaceAll(':', '-');
  return join(backupFolder(dataFolder), `platewright-${stamp}Z.sqlite`);
}
