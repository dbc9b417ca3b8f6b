import { findFaults } from '../store/sqlite-verify.ts';
import { type Backup, listBackups } from './backup.ts';

/** What to do about a damaged store: go back to the newest backup that has no fault. */
export async function restoreAdvice(folder: string): Promise<string> {
  const sound = await newestSound(listBackups(folder));
  return sound === null
    ? `There is no sound backup in ${folder}. Look for one elsewhere; npx platewright restore FILE puts it in place.`
    : `Stop the daemon, and run: npx platewright restore '${sound.path}' (made ${new Date(sound.at).toISOString()}). Paired devices then send again what it lacks.`;
}

async function newestSound(backups: readonly Backup[]): Promise<Backup | null> {
  for (const backup of backups) {
    const faults = await findFaults(backup.path).catch((error: unknown) => [String(error)]);
    if (faults.length === 0) return backup;
  }
  return null;
}
