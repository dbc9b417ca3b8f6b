import { start } from './0001-start.ts';

/** Forward only, in order; a released one is never changed. */
export const migrations: readonly { version: number; sql: string }[] = [start];

export const SCHEMA_VERSION = Math.max(...migrations.map(({ version }) => version));
