import { type Backup, listBackups } from './backup.ts';
import { backupFaults } from './backup-faults.ts';

/**
 * What to do about a damaged store: go back to the newest backup in `folder` that has no fault. `options` lead a command to that
 * store: without them a backup of one could land in another. `origin` is null when the store can't say what it is called.
 */
export async function restoreAdvice(
  folder: string,
  options: string,
  nowMs: number,
  origin: string | null,
): Promise<string> {
  const backups = listBackups(folder, nowMs, origin);
  if (origin === null && new Set(backups.map((backup) => backup.origin)).size > 1)
    return `In ${folder} are backups of several stores, and this one can't say any more which are its own. Look at one with npx platewright restore FILE --try${options}; without --try it is put in place.`;
  const sound = await newestSound(backups);
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
