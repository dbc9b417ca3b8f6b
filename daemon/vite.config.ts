import { resolve } from 'node:path';
import { defineConfig, type Plugin, transformWithOxc } from 'vite';

/**
 * The daemon as a few files in CommonJS: a start then reads these instead of some hundred modules, and Node does not read
 * every name that its own modules have, among them those that load its fetch.
 */
export default defineConfig({
  plugins: [lateFetch(), withoutHttp2()],
  ssr: { noExternal: true, external: ['pg'] },
  build: {
    ssr: true,
    // As deep as the sources, so that paths to the pages are the same.
    outDir: 'dist/cli',
    target: 'node24',
    rolldownOptions: {
      input: [
        resolve(import.meta.dirname, 'src/cli/main.ts'),
        resolve(import.meta.dirname, 'src/cli/launch.ts'),
      ],
      output: {
        format: 'cjs',
        entryFileNames: '[name].cjs',
        chunkFileNames: '[name]-[hash].cjs',
        comments: false,
        codeSplitting: {
          groups: [
            // Before the compiled modules are kept, so in a file of its own.
            { name: 'first', test: /cli[\\/](command|compiled|xdg)\.ts$/, priority: 1 },
            { name: 'start', test: /cli[\\/](command-line|start)\.ts$/ },
          ],
        },
      },
    },
  },
});

/** Hono and its server take the classes of Node's fetch from a module of ours. */
function lateFetch(): Plugin {
  const inject = { lateFetch: [resolve(import.meta.dirname, 'build/late-fetch.ts'), 'lateFetch'] };
  const define = {
    ...{ Headers: 'lateFetch.Headers', Request: 'lateFetch.Request', Response: 'lateFetch.Response' },
    ...{ global: 'lateFetch', 'globalThis.Headers': 'lateFetch.Headers' },
    // It is loaded with fetch; only WebSockets use it.
    'globalThis.CloseEvent': 'undefined',
  };
  return {
    name: 'late-fetch',
    transform: {
      filter: { id: /node_modules[\\/]@?hono[\\/]/ },
      handler: (code, id) => transformWithOxc(code, id, { lang: 'js', define, inject }),
    },
  };
}

/** The server's adapter asks whether a request came by HTTP/2, which nothing here speaks. */
function withoutHttp2(): Plugin {
  return {
    name: 'without-http2',
    enforce: 'pre',
    resolveId: (id) => (id === 'node:http2' ? '\0http2' : null),
    load: (id) =>
      id === '\0http2' ? 'export class Http2ServerRequest {} export const constants = {};' : null,
  };
}
