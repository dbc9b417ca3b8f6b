import { readdirSync, readFileSync } from 'node:fs';
import { extname, join, sep } from 'node:path';

const TYPES: Record<string, string> = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.ico': 'image/x-icon',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.webmanifest': 'application/manifest+json',
  '.woff2': 'font/woff2',
};

interface PageFile {
  bytes: Uint8Array<ArrayBuffer>;
  type: string;
}

/** Files of the built dashboard by their path; held in memory, so that no request can name another file. */
export type PageFiles = ReadonlyMap<string, PageFile>;

/** The built dashboard in a folder, or null when it was not built. */
export function loadPages(folder: string): PageFiles | null {
  const files = new Map<string, PageFile>();
  for (const name of listFiles(folder)) {
    const type = TYPES[extname(name)];
    if (type === undefined) continue;
    files.set(`/${name.split(sep).join('/')}`, {
      bytes: new Uint8Array(readFileSync(join(folder, name))),
      type,
    });
  }
  return files.has('/index.html') ? files : null;
}

/** A file of the dashboard, or null when there is no such file. Its pages differ in the fragment only. */
export function servePage(path: string, files: PageFiles): Response | null {
  const file = files.get(path === '/' ? '/index.html' : path);
  if (file === undefined) return null;
  // Vite puts a hash of the content into these names.
  const caching = path.startsWith('/assets/') ? 'public, max-age=31536000, immutable' : 'no-cache';
  return new Response(file.bytes, { headers: { 'content-type': file.type, 'cache-control': caching } });
}

function listFiles(folder: string): string[] {
  try {
    return readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name).slice(folder.length + 1));
  } catch {
    return [];
  }
}
