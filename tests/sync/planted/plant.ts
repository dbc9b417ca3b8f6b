import { readFileSync } from 'node:fs';
import { registerHooks } from 'node:module';
import { fileURLToPath } from 'node:url';
import { type Fault, faults } from './faults.ts';

/** What takes part in a simulated history; each fault has copies of all of it, so that one fault leaves no trace in another. */
const WORLD = /\/(extension\/replica|daemon\/src\/server|shared-core\/src\/changes|tests\/sync)\/[\w-]+\.ts$/;

/** Lets a module be imported with `?fault=N` and then brings all of the world with fault N planted. */
export function plantOnImport(): void {
  registerHooks({
    resolve(specifier, context, next) {
      const found = next(specifier, context);
      const number = faultOf(context.parentURL ?? '');
      return number === null || !WORLD.test(found.url)
        ? found
        : { ...found, url: `${found.url}?fault=${number}` };
    },
    load(url, context, next) {
      const fault = faults[faultOf(url) ?? -1];
      const path = url.startsWith('file:') ? fileURLToPath(url.replace(/\?.*/, '')) : '';
      if (fault === undefined || !path.endsWith(`/${fault.file}`)) return next(url, context);
      return {
        format: 'module-typescript',
        source: planted(fault, readFileSync(path, 'utf8')),
        shortCircuit: true,
      };
    },
  });
}

/** The source with the fault in it. Throws when the piece does not stand there exactly once. */
export function planted({ file, find, replace, says }: Fault, source: string): string {
  const parts = source.split(find);
  if (parts.length !== 2) throw new Error(`${file} no longer reads as the fault “${says}” expects`);
  return parts.join(replace);
}

function faultOf(url: string): number | null {
  const number = /\?fault=(\d+)$/.exec(url)?.[1];
  return number === undefined ? null : Number(number);
}
