import { hash, randomUUID } from 'node:crypto';
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { setImmediate as breathe } from 'node:timers/promises';
import { flush } from '../store/flush.ts';
import { damaged } from '../store/rows.ts';
import { explain } from '../store/sqlite-trouble.ts';
import { StoreTrouble } from '../store/trouble.ts';

/** Folder of the files beside a store, which are photos, or beside its backups. */
export function bytesFolder(folder: string): string {
  return join(folder, 'bytes');
}

/** The name of content: its SHA-256 in hex. */
export function nameOf(content: Uint8Array): string {
  return hash('sha256', content, 'hex');
}

/**
 * Keeps content in a file of its name, and returns that; on disk when it returns. The same again is no new file, but counts
 * as new. Throws StoreTrouble when the disk is full or can't be written.
 */
export function putBytes(folder: string, content: Uint8Array): string {
  const name = nameOf(content);
  try {
    if (isSound(folder, name)) touch(pathOf(folder, name));
    else write(folder, name, content);
  } catch (error) {
    throw explain(error, folder);
  }
  return name;
}

/** The content of this name, or null when it is not there. Throws StoreTrouble when it is not as it was written. */
export function getBytes(folder: string, name: string): Uint8Array<ArrayBuffer> | null {
  const path = pathOf(folder, name);
  if (!existsSync(path)) return null;
  const content = new Uint8Array(readFileSync(path));
  if (nameOf(content) === name) return content;
  throw damaged(`file ${name}: it differs from its name`);
}

/**
 * Copies what the other folder does not have yet, or not sound; content that is damaged is left out. Throws StoreTrouble when
 * this user may not read or write it.
 */
export async function copyBytes(from: string, to: string): Promise<void> {
  try {
    await copyEach(from, to);
  } catch (error) {
    if (error instanceof StoreTrouble || !(error instanceof Error && 'code' in error)) throw error;
    const what = `The photos in ${from} can't be read (${String(error.code)}). Give them to this user.`;
    throw new StoreTrouble('unwritable', what);
  }
}

async function copyEach(from: string, to: string): Promise<void> {
  for (const name of listBytes(from)) {
    // Other work of the process gets its turn.
    await breathe();
    if (isSound(to, name)) continue;
    const content = readFileSync(pathOf(from, name));
    if (nameOf(content) === name) putBytes(to, content);
  }
}

/** Removes what is not named and was last put there before an instant, ms since 1970. Returns how many files that were. */
export function dropBytes(folder: string, isNamed: (name: string) => boolean, before: number): number {
  const dropped = listBytes(folder)
    .filter((name) => !isNamed(name))
    .map((name) => pathOf(folder, name))
    .filter((path) => statSync(path).mtimeMs < before);
  for (const path of dropped) rmSync(path);
  return dropped.length;
}

function write(folder: string, name: string, content: Uint8Array): void {
  const path = pathOf(folder, name);
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
}

function isSound(folder: string, name: string): boolean {
  const path = pathOf(folder, name);
  return existsSync(path) && nameOf(readFileSync(path)) === name;
}

function touch(path: string): void {
  const now = new Date();
  utimesSync(path, now, now);
}

function listBytes(folder: string): string[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((item) => item.isFile() && /^[0-9a-f]{64}$/.test(item.name))
    .map(({ name }) => name);
}

/** A folder for each first byte, so that none grows too large to be listed. */
function pathOf(folder: string, name: string): string {
  return join(folder, name.slice(0, 2), name);
}
