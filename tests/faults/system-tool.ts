import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';

/**
 * Where a program of the system is: Debian's package is installed when it is missing and this is root, else null and a
 * line that says which tests are left out.
 */
export function systemTool(name: string, debianPackage: string): string | null {
  const found = find(name);
  if (found !== null) return found;
  const installer = find('apt-get');
  if (process.platform === 'linux' && process.getuid?.() === 0 && installer !== null) {
    spawnSync(installer, ['update'], { stdio: 'ignore' });
    execFileSync(installer, ['install', '-y', '--no-install-recommends', debianPackage], { stdio: 'ignore' });
    return find(name);
  }
  console.log(`${name} is missing: what needs it is left out. On Debian: apt-get install ${debianPackage}`);
  return null;
}

function find(name: string): string | null {
  const folders = `${process.env.PATH ?? ''}:/usr/sbin:/sbin`.split(':');
  return folders.map((folder) => join(folder, name)).find((path) => existsSync(path)) ?? null;
}
