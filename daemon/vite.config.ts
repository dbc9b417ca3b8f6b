import { defineConfig } from 'vite';

/** The daemon as a few files: a start then reads these instead of some hundred modules. */
export default defineConfig({
  ssr: { noExternal: true, external: ['pg'] },
  build: {
    ssr: 'src/cli/main.ts',
    // As deep as the sources, so that paths to the pages are the same.
    outDir: 'dist/cli',
    target: 'node24',
    rolldownOptions: { output: { chunkFileNames: '[name]-[hash].js' } },
  },
});
