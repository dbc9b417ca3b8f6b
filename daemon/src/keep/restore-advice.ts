import { type Backup, listBackups } from './backup.ts';
import { backupFaults } from './backup-faults.ts';

/**
 * What to do about a damaged store: go back to the newest backup in `folder` that has no fault. `options` lead a command to that
 * store: without them a backup of one could land in another.
 */
export async function restoreAdvice(folder: string, options: string, nowMs: number): Promise<string> {
  const sound = await newestSound(listBackups(folder, nowMs));
  return sound === null
    ? `There is no sound backup in ${folder}. Look for one elsewhere; npx platewright restore FILE${options} puts it in place.`
    : `Stop the daemon, and run: npx platewright restore '${sound.path}'${options} (made ${new Date(sound.at).toISOString()}). Paired devices then send again what it lacks.`;
}

async function newestSound(backups: readonly Backup[]): Promise<Backup | null> {
  for (const backup of backups) {
    const faults = await backupFaults(backup.path).catch((error: unknown) => [String(error)]);
    if (faults.length === 0) return backup;
  }
  return null;
}
