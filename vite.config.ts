import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import type { Plugin } from 'vite';
import { defineConfig } from 'vitest/config';

/** What is imported late, from workers or on demand; found late, it would make `npm start` load the page twice. */
const IMPORTED_LATE = [
  '@wasm-audio-decoders/flac',
  '@wasm-audio-decoders/ogg-vorbis',
  'fflate',
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

/**
 * Writes offline.js, the service worker: src/io/offline/keeper.js under a list of all files of this build and their common
 * fingerprint, so that any change makes a new version.
 */
function shelveForOffline(): Plugin {
  return {
    name: 'shelve-for-offline',
    apply: ({ build }) => !build?.ssr,
    writeBundle: ({ dir }) => {
      const site = dir ?? resolve('dist/site');
      const files = readdirSync(site, { recursive: true, withFileTypes: true })
        .filter((entry) => entry.isFile() && entry.name !== 'offline.js' && entry.name !== 'licences.md')
        .map((entry) => join(entry.parentPath, entry.name).slice(site.length + 1))
        .sort();
      const print = createHash('sha256');
      for (const file of files) print.update(file).update(readFileSync(join(site, file)));
      const keeper = readFileSync(resolve('src/io/offline/keeper.js'), 'utf8');
      print.update(keeper);
      // The page goes by the address of its folder.
      const shown = files.map((file) => (file === 'index.html' ? './' : `./${file.replaceAll('\\', '/')}`));
      const head = `const VERSION = '${print.digest('hex').slice(0, 12)}';\nconst FILES = ${JSON.stringify(shown)};\n`;
      writeFileSync(join(site, 'offline.js'), head + keeper);
    },
  };
}

/**
 * The command in two pieces besides what is loaded on demand: what every call needs, and what listening needs. As some forty files it
 * took a call longer to find them than to read them.
 */
const COMMAND_PIECES = [
  { name: 'main', test: /src[\\/]terminal[\\/]main\.ts$/, priority: 2 },
  { name: 'analyse', test: /src[\\/]terminal[\\/]analyse\.ts$/, priority: 1 },
];

/**
 * What the page loads at once, in few files: cut by which pages want each of it later, it came in eighty. Of the engine the page uses
 * little at once, so that stays cut. What the engine builds on lies in a file of its own, and so does what waits for the language, whose
 * file wants some of these: else two files would wait for each other.
 */
const PAGE_PIECES = [
  {
    name: 'ground',
    tags: ['$initial' as const],
    test: /node_modules|src[\\/]engine[\\/](base|sums|exercise|notices)[\\/]/,
    priority: 1,
  },
  {
    name: 'page',
    tags: ['$initial' as const],
    test: /^(?!.*(src[\\/]engine[\\/]|src[\\/]main\.ts|index\.html))/,
    includeDependenciesRecursively: false,
  },
];

/** Pages of the tests, built together: each loads its own alone. */
const WORKSHOP = 'workshop';

/** Tonal says nothing of it; its lists of chords and scales, built while loading, are asked for nowhere. */
const TREESHAKE = { moduleSideEffects: [{ test: /[\\/]@tonaljs[\\/]/, sideEffects: false }] };

/** While developing, Vite puts styles into the page itself, which the page's own policy forbids. */
function allowStylesWhileDeveloping(): Plugin {
  return {
    name: 'allow-styles-while-developing',
    apply: 'serve',
    transformIndexHtml: (html) => html.replace("style-src 'self'", "style-src 'self' 'unsafe-inline'"),
  };
}

export default defineConfig(({ isSsrBuild, mode }) => ({
  plugins: [svelte(), shelveForOffline(), allowStylesWhileDeveloping()],
  base: './',
  worker: { format: 'es', rolldownOptions: { treeshake: TREESHAKE } },
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
    minify: true,
    rolldownOptions: {
      treeshake: TREESHAKE,
      output: {
        codeSplitting: { groups: isSsrBuild ? COMMAND_PIECES : mode === WORKSHOP ? [] : PAGE_PIECES },
      },
    },
  },
  ...(isSsrBuild ? { ssr: { noExternal: true, external: ['node-web-audio-api'], target: 'node' } } : {}),
  test: {
    // Styles are left out of tests, save those that a page of ours takes along as text.
    css: { include: /\.css\?raw$/ },
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**'],
          globalSetup: 'tests/house/temporary.ts',
          setupFiles: ['tests/house/seed.ts', 'tests/house/languages.ts'],
          maxWorkers: '100%',
          // What one file has imported, and the pianos that it has decoded, serve the next. A mock ends with its file.
          isolate: false,
          testTimeout: 120_000,
          hookTimeout: 120_000,
          expect: { poll: { timeout: 30_000 } },
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          exclude: ['tests/browser/engines/**'],
          globalSetup: ['tests/house/temporary.ts', 'tests/browser/site.ts'],
          setupFiles: 'tests/browser/setup.ts',
          sequence: { groupOrder: 1 },
          // Side by side: much of their time they wait for sound to be over. What a worker has read or opened (the engine, a
          // Chromium) serves its next file, too.
          maxWorkers: 3,
          isolate: false,
          // Bounds for what never comes. A machine that is busy with other things is slow, and that is no failure.
          testTimeout: 300_000,
          hookTimeout: 300_000,
          expect: { poll: { timeout: 60_000 } },
        },
      },
      {
        extends: true,
        test: {
          name: 'engines',
          include: ['tests/browser/engines/*.test.ts'],
          globalSetup: ['tests/house/temporary.ts', 'tests/browser/site.ts'],
          sequence: { groupOrder: 2 },
          testTimeout: 300_000,
          hookTimeout: 300_000,
          expect: { poll: { timeout: 60_000 } },
        },
      },
    ],
  },
}));
