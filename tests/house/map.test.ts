import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ROOMS } from './rooms.ts';

const ROOT = resolve(import.meta.dirname, '../..');
const text = (file: string): string => readFileSync(resolve(ROOT, file), 'utf8');

/** The tree of folders in a document, two spaces a level → its paths, in its order. */
export function foldersDrawn(document: string): readonly string[] {
  const tree = /```\n(src\/\n.*?)```/s.exec(document)?.[1] ?? '';
  const above: string[] = [];
  return tree
    .split('\n')
    .map((line) => /^( *)([\w-]+)\/( |$)/.exec(line))
    .filter((found) => found !== null)
    .map(([, indent, name]) => {
      above.length = indent!.length / 2;
      above.push(name!);
      return above.join('/');
    });
}

/** A folder → the folders in it, in the order of dependence. */
const roomsIn = (folder: string): readonly string[] =>
  ROOMS.map((room) => `src/${room}`).filter((room) => room.slice(0, room.lastIndexOf('/')) === folder);

describe('DEVELOPERS.md is true', () => {
  const drawn = foldersDrawn(text('DEVELOPERS.md'));

  it.each(['src', 'src/engine', 'src/engine/listen', 'src/io', 'src/terminal', 'src/ui'])(
    'its map shows every room of %s, in their order, and no other',
    (folder) => {
      const shown = drawn.filter((path) => path.slice(0, path.lastIndexOf('/')) === folder);
      expect(shown).toEqual(roomsIn(folder));
    },
  );

  it.each(['DEVELOPERS.md', 'README.md'])('every file that %s names is there', (document) => {
    const named = [...text(document).matchAll(/`((?:src|tests)\/[\w./-]+)`/g)].map((match) => match[1]!);
    const linked = [...text(document).matchAll(/\]\(([\w./-]+)\)/g)].map((match) => match[1]!);
    expect(named.length + linked.length).toBeGreaterThan(2);
    expect([...named, ...linked].filter((path) => !existsSync(resolve(ROOT, path)))).toEqual([]);
  });

  it.each(['DEVELOPERS.md', 'README.md'])('every `npm run …` that %s names is a script', (document) => {
    const { scripts } = JSON.parse(text('package.json')) as { scripts: Record<string, string> };
    const named = [...text(document).matchAll(/npm (?:run )?(start|test|[\w]+:[\w]+|(?<=run )\w+)/g)].map(
      (match) => match[1]!,
    );
    expect(named.length).toBeGreaterThan(2);
    expect(named.filter((name) => !(name in scripts))).toEqual([]);
  });
});

describe('the map test would notice', () => {
  it('a room at any depth', () => {
    expect(foldersDrawn('# Map\n```\nsrc/\n  a/   first\n    b/ second\n  c/\n```\n')).toEqual([
      'src',
      'src/a',
      'src/a/b',
      'src/c',
    ]);
  });
});
