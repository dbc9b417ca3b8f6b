import preact from '@preact/preset-vite';
import { defineConfig } from 'vite';

export default defineConfig({
  // Relative, so that the pages work under whatever path the daemon or a proxy serves them.
  base: './',
  plugins: [preact()],
  build: {
    outDir: 'dist',
    emptyOutDir: true,
    target: 'es2023',
    // The daemon's policy is default-src 'self': nothing may be inlined as a data address.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
});
