import preact from '@preact/preset-vite';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  plugins: [preact()],
  test: {
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          include: ['tests/{unit,reference,property,sync,store,server}/**/*.test.{ts,tsx}'],
          testTimeout: 60_000,
          // A PostgreSQL with dozens of databases takes a while to go.
          hookTimeout: 60_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'world',
          include: ['tests/{browser,faults}/**/*.test.ts'],
          testTimeout: 120_000,
          hookTimeout: 120_000,
          fileParallelism: false,
          // A loaded machine takes its time; what is asserted never depends on it.
          expect: { poll: { timeout: 30_000 } },
        },
      },
    ],
  },
});
