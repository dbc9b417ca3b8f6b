import { hash, randomUUID } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { flush } from '../store/flush.ts';
import { damaged } from '../store/rows.ts';

/** Folder of the files beside a store, such as photos, or beside its backups. */
export function bytesFolder(folder: string): string {
  return join(folder, 'bytes');
}

/** Keeps content in a file named by its SHA-256, and returns that; on disk when it returns. The same again is no new file. */
export function putBytes(folder: string, content: Uint8Array): string {
  const sha256 = hash('sha256', content, 'hex');
  const path = pathOf(folder, sha256);
  if (existsSync(path)) return sha256;
  mkdirSync(dirname(path), { recursive: true, mode: 0o700 });
  const unfinished = `${path}.${randomUUID()}.unfinished`;
  try {
    writeFileSync(unfinished, content, { mode: 0o600 });
    flush(unfinished);
    renameSync(unfinished, path);
    flush(dirname(path));
    flush(folder);
  } finally {
    rmSync(unfinished, { force: true });
  }
  return sha256;
}

/** The content with this SHA-256, or null when it is not there. Throws StoreTrouble when it is not as it was written. */
export function getBytes(folder: string, sha256: string): Uint8Array | null {
  const path = pathOf(folder, sha256);
  if (!existsSync(path)) return null;
  const content = readFileSync(path);
  if (hash('sha256', content, 'hex') === sha256) return content;
  throw damaged(`file ${sha256}: it differs from its name`);
}

/** Copies what the other folder does not have yet; content that is damaged is left out. */
export function copyBytes(from: string, to: string): void {
  for (const sha256 of listBytes(from)) {
    if (existsSync(pathOf(to, sha256))) continue;
    const content = readFileSync(pathOf(from, sha256));
    if (hash('sha256', content, 'hex') === sha256) putBytes(to, content);
  }
}

function listBytes(folder: string): string[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((item) => item.isFile() && /^[0-9a-f]{64}$/.test(item.name))
    .map(({ name }) => name);
}

/** A folder for each first byte, so that none grows too large to be listed. */
function pathOf(folder: string, sha256: string): string {
  return join(folder, sha256.slice(0, 2), sha256);
}
