import { start } from './0001-start.ts';
import { rightsAndChecksums } from './0002-rights-and-checksums.ts';

/** Forward only, in order; a released one is never changed. */
export const migrations: readonly { version: number; sql: string }[] = [start, rightsAndChecksums];

export const SCHEMA_VERSION = Math.max(...migrations.map(({ version }) => version));
