import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';

/** What is imported late, from workers or on demand; found late, it would make `npm start` load the page twice. */
const IMPORTED_LATE = [
  '@wasm-audio-decoders/flac',
  '@wasm-audio-decoders/ogg-vorbis',
  'fft.js',
  'idb',
  'mediabunny',
  'meyda',
  'midi-file',
  'mpg123-decoder',
  'opus-decoder',
  'pitchy',
  'tonal',
  'valibot',
  'vexflow/core',
];

export default defineConfig(({ isSsrBuild }) => ({
  plugins: [svelte()],
  base: './',
  worker: { format: 'es' },
  optimizeDeps: { include: IMPORTED_LATE },
  build: {
    outDir: 'dist/site',
    emptyOutDir: true,
    copyPublicDir: !isSsrBuild,
    target: 'es2022',
    // The licences ask that their texts travel with what is built from them.
    license: { fileName: 'licences.md' },
    // The decoders carry their WASM as strings; they are loaded only when a file needs them.
    chunkSizeWarningLimit: 1200,
  },
  ...(isSsrBuild ? { ssr: { noExternal: true, external: ['node-web-audio-api'], target: 'node' } } : {}),
  test: {
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**'],
          setupFiles: 'tests/house/seed.ts',
          maxWorkers: '100%',
          testTimeout: 60_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: 'tests/browser/site.ts',
          // After the unit tests, one by one: some of these measure how quick the page is.
          sequence: { groupOrder: 1 },
          maxWorkers: 1,
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
}));
