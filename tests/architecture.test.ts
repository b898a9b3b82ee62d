import { readdirSync } from 'node:fs';
import { relative, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { findRing } from './house/cycles.ts';
import { importsOf, isFile, namesImportedBy, sourcesIn, type Import } from './house/imports.ts';
import { ROOMS } from './house/rooms.ts';
import { PACKAGES, brokenRule } from './house/rules.ts';

const SRC = resolve(import.meta.dirname, '../src');
const files = sourcesIn(SRC);
const imports = files.flatMap((file) => importsOf(SRC, file));
const ofFiles = imports.filter((one) => one.kind === 'file');
const ofPackages = imports.filter((one) => one.kind === 'package');

describe('the folders are the path of the data', () => {
  it('finds sources of every kind, and their imports', () => {
    for (const ending of ['.ts', '.svelte', '.worker.ts', '.worklet.ts'])
      expect(
        files.filter((file) => file.endsWith(ending)),
        ending,
      ).not.toEqual([]);
    for (const room of Object.keys(PACKAGES))
      expect(
        ofFiles.filter(({ importer }) => importer.startsWith(room)),
        room,
      ).not.toEqual([]);
    expect(ofPackages).not.toEqual([]);
  });

  it('every import names a file with its ending', () => {
    expect(ofFiles.filter(({ target }) => !isFile(SRC, target))).toEqual([]);
  });

  it('every room has its place in the order, once, and no other is there', () => {
    const inRooms = readdirSync(SRC, { recursive: true, withFileTypes: true }).filter((entry) =>
      entry.isFile(),
    );
    const paths = inRooms.map((entry) => relative(SRC, entry.parentPath).replaceAll('\\', '/').split('/'));
    const above = paths.flatMap((parts) => parts.map((_, at) => parts.slice(0, at + 1).join('/')));
    const rooms = [...new Set(above)].filter((room) => room !== '' && !/(^|\/)[._]/.test(room));
    expect(ROOMS.toSorted()).toEqual(rooms.sort());
  });

  it('a room imports only rooms that stand above it', () => {
    const broken = ofFiles.map(({ importer, target }) => brokenRule(importer, target));
    expect(broken.filter((message) => message !== null)).toEqual([]);
  });

  it('a room uses only the packages on its list', () => {
    const allowed = ({ importer, name }: Import & { kind: 'package' }) =>
      name in (PACKAGES[importer.split('/')[0]!] ?? {});
    expect(ofPackages.filter((one) => !one.importer.endsWith('.mjs') && !allowed(one))).toEqual([]);
  });

  it('no file imports itself by way of others, not even for its types', () => {
    const arrows = files.map((file) => [file, targetsOf(file)] as const);
    expect(findRing(new Map(arrows))).toBeUndefined();
  });
});

const targetsOf = (file: string): string[] =>
  ofFiles.filter(({ importer }) => importer === file).map(({ target }) => target);

describe('the test would notice', () => {
  it.each([
    ['engine/base/units.ts', 'engine/listen/index.ts', /stands below/],
    ['engine/listen/partials/index.ts', 'engine/exercise/index.ts', /knowing the exercise/],
    ['engine/listen/audio/index.ts', 'engine/listen/index.ts', /reaches up/],
    ['engine/listen/audio/index.ts', 'engine/listen/network/index.ts', /stands below/],
    ['engine/report/words/index.ts', 'engine/listen/audio/index.ts', /hears again/],
    ['engine/match/index.ts', 'engine/assess.ts', /reaches up/],
    ['ui/plots/geometry.ts', 'engine/report/index.ts', /by a window/],
    ['main.ts', 'engine/report/index.ts', /by a window/],
    ['ui/report/Report.svelte', 'io/decode/browser.ts', /inside a device/],
    ['ui/report/Report.svelte', 'ui/App.svelte', /reaches up/],
    ['ui/report/words.ts', 'terminal/drawing/index.ts', /the command line/],
    ['ui/report/words.ts', 'library/index.ts', /for others/],
    ['io/decode/index.ts', 'ui/kit/index.ts', /stands below/],
    ['io/decode/index.ts', '../tests/support/render.ts', /leaves src/],
  ])('%s importing %s', (from, to, message) => {
    expect(brokenRule(from, to)).toMatch(message);
  });

  it('a room that has no place in the order', () => {
    expect(() => brokenRule('engine/cellar/index.ts', 'engine/base/index.ts')).toThrow(
      /engine\/cellar is not in/,
    );
  });

  it.each([
    ['engine/listen/audio/resample.ts', 'engine/listen/types.ts', 'the words of its folder'],
    ['engine/listen/index.ts', 'engine/listen/transcribe/index.ts', 'a folder its own room'],
    ['engine/report/index.ts', 'engine/listen/index.ts', 'the types of what was heard'],
    ['ui/report/Report.svelte', 'ui/kit/Button.svelte', 'a room above'],
    ['main.ts', '../audio-fixtures/late-thumb/attempt.wav', 'the bundled attempt'],
  ])('but lets %s import %s, %s', (from, to) => {
    expect(brokenRule(from, to)).toBeNull();
  });

  it.each([
    [`import { a } from './a.ts';`, ['./a.ts']],
    [`import type { A } from './a.ts';`, ['./a.ts']],
    [`import './a.css';`, ['./a.css']],
    [`export { a } from './a.ts';`, ['./a.ts']],
    [`export * from './a.ts';`, ['./a.ts']],
    [`export * as all from "./a.ts";`, ['./a.ts']],
    [`export type * from './a.ts';`, ['./a.ts']],
    [`const a = await import('./a.ts');`, ['./a.ts']],
    [`let a: import('./a.ts').A;`, ['./a.ts']],
    [`import a = require('./a.ts');`, ['./a.ts']],
    [`import url from './a.worklet.ts?worker&url';`, ['./a.worklet.ts?worker&url']],
    [`new Worker(new URL('./a.worker.ts', import.meta.url))`, ['./a.worker.ts']],
    [`// import './a.ts';\nconst text = "import './b.ts'";`, []],
  ])('%s', (text, names) => {
    expect(namesImportedBy('some.ts', text)).toEqual(names);
  });

  it('an import in either script of a component, and none in its text', () => {
    const component = `<script module lang="ts">import './a.ts';</script>
      <script lang="ts">\nimport B from './B.svelte';\n</script><p>import './c.ts'</p>`;
    expect(namesImportedBy('Some.svelte', component)).toEqual(['./a.ts', './B.svelte']);
  });

  it.each([
    ['of two', { a: ['b'], b: ['a'] }, ['a', 'b', 'a']],
    ['of one', { a: ['b'], b: ['b'] }, ['b', 'b']],
    ['behind a long way', { a: ['b', 'c'], b: ['c'], c: ['d'], d: ['b'] }, ['b', 'c', 'd', 'b']],
    ['and none where two ways lead to one place', { a: ['b', 'c'], b: ['d'], c: ['d'] }, undefined],
  ])('a ring %s', (_, graph, ring) => {
    expect(findRing(new Map(Object.entries(graph as Record<string, string[]>)))).toEqual(ring);
  });
});
