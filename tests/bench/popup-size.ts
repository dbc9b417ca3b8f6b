import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { BUILT_EXTENSION } from '../support/extension.ts';

const IMPORT = /(?:from|import)\s*\(?["'`](\.{1,2}\/[^"'`]+\.js)["'`]/g;

/** The most that the popup's whole script may take, compressed. */
export const MOST_POPUP_BYTES = 60_000;

/**
 * Bytes of all JavaScript that the built popup loads, each file compressed by gzip as a server would; files that others
 * import are counted. Throws when the extension is not built.
 */
export function popupScriptBytes(): number {
  const page = join(BUILT_EXTENSION, 'popup.html');
  if (!existsSync(page)) throw new Error('The extension is not built: run npm run build:extension.');
  const named = [...readFileSync(page, 'utf8').matchAll(/(?:src|href)="\/?([^"]+\.js)"/g)].map((match) =>
    join(BUILT_EXTENSION, match[1] ?? ''),
  );
  const seen = new Set<string>();
  const load = (path: string) => {
    if (seen.has(path)) return;
    seen.add(path);
    for (const match of readFileSync(path, 'utf8').matchAll(IMPORT))
      load(join(dirname(path), match[1] ?? ''));
  };
  for (const path of named) load(path);
  return [...seen].reduce((sum, path) => sum + gzipSync(readFileSync(path)).length, 0);
}
