import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Browser } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { sharedBrowser } from '../visit.ts';
import { visitDoor } from '../workshop.ts';

const OLD = resolve(import.meta.dirname, '../../version-0.1');

interface Stored {
  readonly name: string;
  readonly version: number;
  readonly stores: readonly {
    readonly name: string;
    readonly keyPath: string | null;
    readonly records: readonly { readonly key?: string | number; readonly value: unknown }[];
  }[];
}
const databases = JSON.parse(readFileSync(resolve(OLD, 'databases.json'), 'utf8')) as readonly Stored[];
/** What version 0.1 had in one of its stores, in the order of its keys. */
const stored = (database: string, store: string): readonly unknown[] =>
  databases
    .find(({ name }) => name === `evenfall-${database}`)!
    .stores.find(({ name }) => name === store)!
    .records.map(({ value }) => value);

/** What every test here begins with, in the page: databases written as version 0.1 had them, binary values as text and back. */
const PRELUDE = `
  const OLD = ${JSON.stringify(databases)};
  const bytesOf = (text) => Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
  const revive = (value) => {
    if (value === null || typeof value !== 'object') return value;
    if (Array.isArray(value)) return value.map(revive);
    if ('$buffer' in value) return bytesOf(value.$buffer).buffer;
    if ('$blob' in value) return new Blob([bytesOf(value.$blob)]);
    if ('$Uint8Array' in value) return bytesOf(value.$Uint8Array);
    if ('$Float32Array' in value) return new Float32Array(bytesOf(value.$Float32Array).buffer);
    return Object.fromEntries(Object.entries(value).map(([name, part]) => [name, revive(part)]));
  };
  const textOf = (bytes) => btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''));
  const plain = (value) => {
    if (value instanceof Uint8Array) return { $Uint8Array: textOf(value) };
    if (Array.isArray(value)) return value.map(plain);
    if (value === null || typeof value !== 'object') return value;
    return Object.fromEntries(Object.entries(value).map(([name, part]) => [name, plain(part)]));
  };
  for (const { name, version, stores } of OLD) {
    const database = await window.door.openDB(name, version, {
      upgrade: (fresh) => {
        for (const { name: store, keyPath } of stores)
          fresh.createObjectStore(store, keyPath === null ? undefined : { keyPath });
      },
    });
    for (const { name: store, records } of stores)
      for (const { key, value } of records)
        await (key === undefined ? database.put(store, revive(value)) : database.put(store, revive(value), key));
    database.close();
  }
  const now = () => Date.UTC(2026, 10, 22);
`;

describe('what version 0.1 left in the browser opens unchanged', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await sharedBrowser();
  });

  async function inPage<T>(body: string): Promise<T> {
    const { page, errors, close } = await visitDoor(browser, 'journal');
    const result = await page.evaluate<T>(`(async () => { ${PRELUDE} ${body} })()`);
    expect(errors).toEqual([]);
    await close();
    return result;
  }

  it('the journal', async () => {
    const found = await inPage<{
      states: unknown;
      deleted: number;
      reports: unknown;
      sounds: unknown;
      remembered: unknown;
    }>(
      `const history = window.door.createHistory({ now });
       const entries = await history.entries();
       const ids = entries.map(({ id }) => id);
       const sounds = [];
       for (const id of ids) sounds.push((await history.sound(id))?.channels[0].length ?? 0);
       return { states: entries.map(({ state }) => state), deleted: entries.filter((one) => one.deletedMs !== null).length,
         reports: await history.reports(ids), sounds, remembered: await history.remembered() };`,
    );
    expect(found).toEqual({
      states: ['told', 'told', 'told', 'told', 'no-report', 'unanalysed'],
      deleted: 1,
      reports: stored('journal', 'reports'),
      sounds: [2400, 0, 2400, 2400, 2400, 2400],
      remembered: { ready: { evennessPercent: 6.5 }, language: 'de' },
    });
  });

  it('a journal that it exported', async () => {
    const file = readFileSync(resolve(OLD, 'journal.tar.gz')).toString('base64');
    const found = await inPage<{ outcome: unknown; same: unknown; reports: unknown }>(
      `const history = window.door.createHistory({ now, databaseName: 'other' });
       const file = new Blob([bytesOf('${file}')]);
       const outcome = await history.importFrom(file);
       const again = await history.importFrom(await history.exportAll());
       const ids = (await history.entries()).map(({ id }) => id);
       return { outcome, same: again.same, reports: await history.reports(ids) };`,
    );
    expect(found).toEqual({
      outcome: { added: 5, same: 0, both: 0, refused: [] },
      same: 5,
      // The fourth attempt had been deleted.
      reports: stored('journal', 'reports').slice(0, 3),
    });
  });

  it('the shelf of reviews', async () => {
    const found = await inPage<{ all: { id: string }[]; review: unknown }>(
      `const shelf = window.door.createShelf({ now });
       return { all: await shelf.all(), review: plain(await shelf.review('review-one')) };`,
    );
    expect(found.all.toSorted((a, b) => (a.id < b.id ? -1 : 1))).toEqual(stored('shelf', 'heads'));
    expect(found.review).toEqual(stored('shelf', 'reviews')[0]);
  });

  it('the recordings of students', async () => {
    const found = await inPage<Record<string, unknown>>(
      `const teaching = window.door.createTeachingStore({ now });
       const loaded = await teaching.load();
       const [{ id }] = loaded.playings;
       const waiting = loaded.files.find(({ state }) => state === 'waiting');
       return { ...loaded, reports: await teaching.reports(id), sound: plain(await teaching.sound(id)),
         said: plain(await teaching.said(id)), blob: await (await teaching.blob(waiting.id)).text() };`,
    );
    const only = (store: string): unknown => stored('teaching', store)[0];
    expect(found).toEqual({
      students: stored('teaching', 'students'),
      files: stored('teaching', 'files'),
      playings: stored('teaching', 'playings'),
      reports: only('reports'),
      sound: only('sounds'),
      said: only('said'),
      blob: 'def',
    });
  });

  it('an attempt over which the page was closed', async () => {
    const found = await inPage<unknown>(
      `const [left] = await window.door.createUnfinished().recover();
       const { channels, sampleRateHz, about } = left;
       await left.forget();
       const after = (await window.door.createUnfinished().recover()).length;
       return { frames: channels[0].length, sampleRateHz, about, after };`,
    );
    expect(found).toEqual({ frames: 4800, sampleRateHz: 24_000, about: { targetBpm: 80 }, after: 0 });
  });
});
