import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';

export default defineConfig(({ isSsrBuild }) => ({
  plugins: [svelte()],
  base: './',
  worker: { format: 'es' },
  build: {
    outDir: 'dist/site',
    emptyOutDir: true,
    target: 'es2022',
    // The decoders carry their WASM as strings; they are loaded only when a file needs them.
    chunkSizeWarningLimit: 1200,
  },
  ...(isSsrBuild ? { ssr: { noExternal: true, target: 'node' } } : {}),
  test: {
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**'],
          testTimeout: 30_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: 'tests/browser/site.ts',
          testTimeout: 60_000,
          hookTimeout: 120_000,
          fileParallelism: false,
        },
      },
    ],
  },
}));
