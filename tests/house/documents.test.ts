import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { dirname, relative, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

const ROOT = resolve(import.meta.dirname, '../..');
const read = (file: string): string => readFileSync(resolve(ROOT, file), 'utf8');

/** Every text of ours, as paths from the root. */
const TEXTS = ['src', 'tests', 'audio-fixtures', '.ci', '.']
  .flatMap((folder) =>
    readdirSync(resolve(ROOT, folder), { recursive: folder !== '.', withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => relative(ROOT, resolve(entry.parentPath, entry.name)).replaceAll('\\', '/')),
  )
  .filter((file) => /\.(ts|mts|mjs|js|svelte|css|html|py|as|md|ya?ml|json)$|^\.ci\//.test(file))
  .filter((file) => file !== 'package-lock.json' && !/truth\.json$|weights\.ts$/.test(file));
const DOCUMENTS = TEXTS.filter((file) => file.endsWith('.md'));

/** What is only there once something has been built or rendered. */
const MADE = ['licences.md'];

/** A heading → its address in the page, as is usual for Markdown on the web. */
const addressOf = (heading: string): string =>
  heading
    .toLowerCase()
    .replace(/[^\p{L}\p{N} _-]/gu, '')
    .replaceAll(' ', '-');

/** The links of a document, to files and places of our own, that lead nowhere. */
function deadLinks(document: string): readonly string[] {
  const links = [...read(document).matchAll(/\]\((?!https?:)([^)\s]+)\)/g)].map((match) => match[1]!);
  return links.filter((link) => {
    const [path = '', place] = link.split('#');
    const file = path === '' ? document : relative(ROOT, resolve(ROOT, dirname(document), path));
    if (!existsSync(resolve(ROOT, file))) return true;
    const headings = [...read(file).matchAll(/^#+ (.+)$/gm)].map((match) => addressOf(match[1]!));
    return place !== undefined && !headings.includes(place);
  });
}

describe('the documents', () => {
  it.each([
    ['README.md', 9000],
    ['DEVELOPERS.md', 12_000],
  ])('%s is read in one go: at most %d bytes', (document, most) => {
    expect(Buffer.byteLength(read(document))).toBeLessThanOrEqual(most);
  });

  it('link only to what is there', () => {
    expect(DOCUMENTS.length).toBeGreaterThan(10);
    expect(DOCUMENTS.flatMap((file) => deadLinks(file).map((link) => `${file}: ${link}`))).toEqual([]);
  });

  it('explain at most forty words', () => {
    const words = /## Words\n(.*?)\n## /s.exec(read('DEVELOPERS.md'))?.[1] ?? '';
    const explained = words.match(/^- \*\*/gm) ?? [];
    expect(explained.length).toBeGreaterThan(20);
    expect(explained.length).toBeLessThanOrEqual(40);
  });
});

describe('nothing outside this repository is cited', () => {
  it('no document that is not here', () => {
    const cited = TEXTS.flatMap((file) =>
      [...read(file).matchAll(/[\w./-]*\w\.md\b/g)].map(([name]) => ({
        file,
        name: name.replace(/^(\.+\/)+/, ''),
      })),
    );
    expect(cited.length).toBeGreaterThan(10);
    const here = [...DOCUMENTS, ...MADE];
    const missing = cited.filter(
      ({ name }) => !here.some((path) => path === name || path.endsWith(`/${name}`)),
    );
    expect(missing.map(({ file, name }) => `${file}: ${name}`)).toEqual([]);
  });

  it.each([
    ['the number of an issue', /\b[Ii]ssue #?\d|\bthe issue (asks|would|wants)/],
    ['a drawing that is not here', /docs\/look/],
    ['a place on somebody’s machine', /["'`( ]\/(work|tmp|home|root|Users)\/\w/],
  ])('not %s', (_, pattern) => {
    expect(TEXTS.filter((file) => pattern.test(read(file)))).toEqual([]);
  });
});

/** What a document explains: the names in the first column of its tables. */
const explainedIn = (document: string): readonly string[] =>
  (read(document).match(/^\| `.*?\|/gm) ?? []).flatMap((row) =>
    [...row.matchAll(/`([\w-]+)`/g)].map(([, name]) => name!),
  );

describe('every definition is inside', () => {
  it('of each figure of a report', () => {
    const schema = JSON.parse(read('src/engine/report/report.schema.json')) as {
      properties: { measures: { properties: Record<string, unknown> } };
    };
    const figures = Object.keys(schema.properties.measures.properties);
    expect(figures.length).toBeGreaterThan(10);
    expect([...explainedIn('src/engine/report/measures/README.md')].sort()).toEqual(figures.sort());
  });
});
