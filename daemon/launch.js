// Not in TypeScript: for Node to read that takes three times as long as the daemon's whole start.
import './need-node.js';
import { existsSync } from 'node:fs';

const built = new URL('dist/cli/launch.cjs', import.meta.url);
await import(existsSync(built) ? built.href : './src/cli/launch.ts');
