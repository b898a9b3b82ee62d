import { readdirSync, readFileSync } from 'node:fs';
import { dirname, relative, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

const SRC = resolve(import.meta.dirname, '../src');

/** npm packages that the engine may use, each with its reason. */
const ENGINE_PACKAGES: Readonly<Record<string, string>> = {
  'fft.js': 'spectra',
  meyda: 'timbre features',
  pitchy: 'monophonic pitch (McLeod)',
  tonal: 'music theory',
};

/**
 * The one rule: a room imports only rooms that stand above it (earlier in the alphabet) in its folder's listing. A file
 * that lies directly in a folder is that folder's own and may import any of its rooms; a room never imports such a file
 * of a folder it lies in, except through nothing: what two rooms share lies in a room above both.
 */
export function brokenRule(importer: string, imported: string): string | null {
  const from = importer.split('/');
  const to = imported.split('/');
  const at = from.findIndex((part, index) => part !== to[index]);
  const fromIsFile = at === from.length - 1;
  const toIsFile = at === to.length - 1;
  if (fromIsFile) return null;
  if (toIsFile && to.at(-1) !== 'types.ts') return `${importer} reaches up to ${imported}`;
  if (!toIsFile && from[at]! < to[at]!) return `${importer} imports ${imported}, which stands below it`;
  if (from[0] === 'ui' && to[0] === 'terminal') return `${importer} imports the terminal`;
  if (from[0] !== 'engine' && to[0] === 'engine' && imported !== 'engine/index.ts')
    return `${importer} enters the engine by a window: ${imported}`;
  if (from[0] === 'io' && to[0] === 'ui') return `${importer} imports the ui`;
  if (imported.startsWith('engine/exercise/') && importer.startsWith('engine/listen/'))
    return `${importer} knows the exercise`;
  return null;
}

function importsOf(file: string): string[] {
  const text = readFileSync(resolve(SRC, file), 'utf8');
  return [...text.matchAll(/(?:from|import)\s*\(?\s*['"]([^'"]+)['"]/g)].map((match) => match[1]!);
}

describe('the folders are the path of the data', () => {
  const files = readdirSync(SRC, { recursive: true, encoding: 'utf8' })
    .map((file) => file.replaceAll('\\', '/'))
    .filter((file) => /\.(ts|svelte)$/.test(file));

  it('finds the sources', () => {
    expect(files.length).toBeGreaterThan(10);
    expect(files.flatMap(importsOf).length).toBeGreaterThan(10);
  });

  it('lets a room import only rooms above it', () => {
    const broken = files.flatMap((file) =>
      importsOf(file)
        .filter((name) => name.startsWith('.'))
        .map((name) => relative(SRC, resolve(SRC, dirname(file), name.replace(/\?.*$/, ''))))
        .map((target) => brokenRule(file, target.replaceAll('\\', '/')))
        .filter((message) => message !== null),
    );
    expect(broken).toEqual([]);
  });

  it('lets the engine use only the packages on the list', () => {
    const used = files
      .filter((file) => file.startsWith('engine/'))
      .flatMap((file) => importsOf(file).filter((name) => !name.startsWith('.')));
    expect([...new Set(used)].filter((name) => !(name in ENGINE_PACKAGES))).toEqual([]);
  });

  it.each([
    ['engine/base/units.ts', 'engine/listen/index.ts', /below/],
    ['engine/listen/pitches/index.ts', 'engine/exercise/index.ts', /knows the exercise/],
    ['engine/listen/audio/index.ts', 'engine/listen/index.ts', /reaches up/],
    ['ui/plots/geometry.ts', 'engine/report/index.ts', /by a window/],
    ['io/decode/index.ts', 'ui/kit/index.ts', /below/],
  ])('would notice %s importing %s', (importer, imported, message) => {
    expect(brokenRule(importer, imported)).toMatch(message);
  });
});
