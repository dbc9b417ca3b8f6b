/** Brings a fresh machine to where the tests can run: a Chromium, and the extension and dashboard built. */
import { execFileSync } from 'node:child_process';
import { chromiumPath } from './chromium.ts';

function run(command: string, ...args: string[]): void {
  execFileSync(command, args, { stdio: ['ignore', 'ignore', 'inherit'] });
}

function installChromium(): void {
  if (process.platform !== 'linux' || process.getuid?.() !== 0) {
    console.error(
      'The browser tests need Chromium. Install it (Debian: `apt-get install chromium`), or name it in CHROMIUM.',
    );
    process.exit(1);
  }
  console.error('No Chromium found: installing the system package…');
  run('apt-get', 'update');
  run('apt-get', 'install', '-y', 'chromium');
}

if (chromiumPath() === null) installChromium();
run('npm', 'run', 'build');
