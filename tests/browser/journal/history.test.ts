import type { Browser, Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { timeIn } from '../../../src/io/history/entry.ts';
import { sharedBrowser, type Visit } from '../visit.ts';
import type { Door } from './door.ts';
import { visitDoor } from '../workshop.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await sharedBrowser();
});

/** What every test here begins with, in the page: a journal and an attempt to put into it. */
const PRELUDE = `
  const { createHistory, nameFor, MIGRATIONS, openDB, tarParts, tarEnd, invent, INVENTED } = window.door;
  const START = Date.UTC(2026, 8, 1, 17);
  const sine = (seed) => Float32Array.from({ length: 4800 }, (_, i) => 0.3 * Math.sin(i / (7 + seed)));
  const attempt = (seed = 0) => ({
    sound: { channels: [sine(seed)], sampleRateHz: 48000 },
    name: 'your recording', remarks: ['one'], device: 'invented',
    choice: INVENTED.lateThumb.choice, targetBpm: 80,
  });
  const { report } = invent(INVENTED.lateThumb);
  let clock = START;
  const journal = (options = {}) => createHistory({ now: () => (clock += 60000), ...options });
  const rawTar = async (...members) => new Blob([...members, ['', '']].flatMap(([name, text]) =>
    name === '' ? [tarEnd()] : tarParts({ name, bytes: new TextEncoder().encode(text) }, START)));
`;

/** Runs the body of an async function in a page of its own and gives what it returns. */
async function inPage<T>(body: string): Promise<T> {
  const { page, errors, close } = await visitDoor(browser, 'journal');
  const result = await run<T>(page, body);
  expect(errors).toEqual([]);
  await close();
  return result;
}
const run = <T>(page: Page, body: string): Promise<T> =>
  page.evaluate<T>(`(async () => { ${PRELUDE} ${body} })()`);

describe('the store of the journal', () => {
  it('keeps sound before it is analysed, and gives it back after the page was closed', async () => {
    const there: Visit = await visitDoor(browser, 'journal');
    await run(there.page, `await journal().keep(attempt());`);
    await there.page.reload();
    await there.page.waitForFunction(() => 'door' in window);
    const found = await run<{ state: string; rate: number; frames: number; worst: number }>(
      there.page,
      `const history = journal();
       const [entry] = await history.entries();
       const { channels, sampleRateHz } = await history.sound(entry.id);
       const wanted = sine(0);
       const worst = Math.max(...channels[0].map((value, i) => Math.abs(value - wanted[i])));
       return { state: entry.state, rate: sampleRateHz, frames: channels[0].length, worst };`,
    );
    expect(found).toMatchObject({ state: 'unanalysed', rate: 48_000, frames: 4800 });
    // 16 bits: half a step, and the step of float32 beside it.
    expect(found.worst).toBeLessThan(0.51 / 32_768);
    await there.close();
  });

  it('keeps an attempt once, under the name and time of its beginning; deleted, it stays so', async () => {
    const found = await inPage<{ ids: string[]; whenMs: number[]; deleted: boolean[]; worst: number }>(
      `const history = journal();
       const named = { ...attempt(), id: nameFor(START - 5000, 'abcd1234') };
       const first = await history.keep(named);
       await history.remove([first.id]);
       const again = await history.keep({ ...named, ...attempt(1) });
       const all = await history.entries();
       const { channels } = await history.sound(first.id);
       const worst = Math.max(...channels[0].map((value, i) => Math.abs(value - sine(0)[i])));
       return { ids: [named.id, first.id, again.id, ...all.map(({ id }) => id)], whenMs: all.map((one) => one.whenMs - START),
         deleted: [again, ...all].map((one) => one.deletedMs !== null), worst };`,
    );
    expect(new Set(found.ids).size).toBe(1);
    expect(found).toMatchObject({ whenMs: [-5000], deleted: [true, true] });
    expect(found.worst).toBeLessThan(0.51 / 32_768);
  });

  it('completes an attempt with its report, and keeps its figures at hand', async () => {
    const found = await inPage<{ told: unknown; nothing: unknown; reports: number; nobody: unknown }>(
      `const history = journal();
       const first = await history.keep(attempt());
       const second = await history.keep(attempt(1));
       await history.complete(first.id, { report });
       await history.complete(second.id, { reason: 'No piano notes were heard in it.' });
       const nobody = await history.complete('0mnoboddy-0000', { report });
       const [told, nothing] = await history.entries();
       return { told, nothing, nobody, reports: (await history.reports([first.id, second.id])).length };`,
    );
    expect(found.told).toMatchObject({
      state: 'told',
      summary: { expected: 13, lateCrossings: 2 },
      reason: '',
    });
    expect(found.nothing).toMatchObject({ state: 'no-report', summary: null, reason: /piano/ as unknown });
    expect(found).toMatchObject({ reports: 1, nobody: null });
  });

  it('brings deleted attempts back, and ends them for good after a week', async () => {
    const found = await inPage<{ deleted: number[]; back: number[]; later: string[]; sound: unknown }>(
      `const history = journal();
       const ids = [];
       for (let i = 0; i < 3; i += 1) ids.push((await history.keep(attempt(i))).id);
       await history.remove(ids);
       const deleted = (await history.entries()).map((entry) => entry.deletedMs);
       await history.restore([ids[1]]);
       const back = (await history.entries()).map((entry) => entry.deletedMs);
       await history.close();
       clock += 8 * 86400000;
       const reopened = journal();
       const later = (await reopened.entries()).map((entry) => entry.id);
       const sound = await reopened.sound(ids[0]);
       return { deleted, back, later: later.map((id) => ids.indexOf(id)), sound };`,
    );
    expect(found.deleted.every((when) => when !== null)).toBe(true);
    expect(found.back.map((when) => when === null)).toEqual([false, true, false]);
    expect(found.later).toEqual([1]);
    expect(found.sound).toBeNull();
  });

  it('lets go of sound and keeps the report', async () => {
    const found = await inPage<unknown>(
      `const history = journal();
       const { id } = await history.keep(attempt());
       await history.complete(id, { report });
       await history.forgetSound([id]);
       const [entry] = await history.entries();
       return { bytes: entry.soundBytes, sound: await history.sound(id), reports: (await history.reports([id])).length };`,
    );
    expect(found).toEqual({ bytes: 0, sound: null, reports: 1 });
  });

  it('remembers small things, and says how much room there is', async () => {
    const found = await inPage<{ remembered: unknown; storage: { usedBytes: number; quotaBytes: number } }>(
      `const history = journal();
       await history.remember('ready', { evennessPercent: 6 });
       return { remembered: await history.remembered(), storage: await history.storage() };`,
    );
    expect(found.remembered).toEqual({ ready: { evennessPercent: 6 } });
    expect(found.storage.quotaBytes).toBeGreaterThan(1e6);
  });
});

describe('the schema', () => {
  it('opens a journal that version 1 wrote, byte for byte as it did', async () => {
    const found = await inPage<{
      entries: unknown[];
      reports: unknown[];
      frames: number;
      remembered: unknown;
    }>(
      // Written by hand as version 1 does; this text stays as it is for as long as anybody has such a journal.
      `const old = await openDB('evenfall-journal', 1, { upgrade: (database) => {
         for (const name of ['drawers', 'reports', 'sounds', 'remembered']) database.createObjectStore(name);
       } });
       const id = '0mf1c2r80-1a2b3c4d';
       const whenMs = parseInt('0mf1c2r80', 36);
       await old.put('drawers', '{"exercises":[{"key":"Ab major","form":"arpeggio","hands":"right","octaves":2}],' +
         '"texts":["your recording","a remark","","crossing-late-one-direction"],' +
         '"rows":[["' + id + '",' + whenMs + ',1,0,[1],null,0,80,6.5,46,2,null,[0,80,13,0,1,0,0,9.42,77.1,2,92.5,null,null,3]]]}',
         Math.floor(whenMs / 2592000000));
       await old.put('reports', report, id);
       const wav = new Uint8Array([82,73,70,70,38,0,0,0,87,65,86,69,102,109,116,32,16,0,0,0,1,0,1,0,128,187,0,0,0,119,1,0,2,0,
         16,0,100,97,116,97,2,0,0,0,0,64]);
       await old.put('sounds', wav.buffer, id);
       await old.put('remembered', JSON.stringify({ evennessPercent: 6 }), 'ready');
       old.close();
       const history = journal();
       const entries = await history.entries();
       const { channels } = await history.sound(id);
       return { entries, reports: await history.reports([id]), frames: channels[0].length, remembered: await history.remembered() };`,
    );
    expect(found.entries).toHaveLength(1);
    expect(found.entries[0]).toEqual({
      id: '0mf1c2r80-1a2b3c4d',
      whenMs: Number.parseInt('0mf1c2r80', 36),
      state: 'told',
      name: 'your recording',
      remarks: ['a remark'],
      device: null,
      choice: { key: 'Ab major', form: 'arpeggio', hands: 'right', octaves: 2 },
      targetBpm: 80,
      durationSec: 6.5,
      soundBytes: 46,
      reason: '',
      summary: {
        exercise: { key: 'Ab major', form: 'arpeggio', hands: 'right', octaves: 2 },
        targetBpm: 80,
        expected: 13,
        wrong: 0,
        missed: 1,
        extra: 0,
        unsure: 0,
        evennessPercent: 9.42,
        tempoBpm: 77.1,
        lateCrossings: 2,
        worstCrossingMs: 92.5,
        chordSpreadMs: null,
        handsApartMs: null,
        situation: 'crossing-late-one-direction',
      },
      deletedMs: null,
    });
    expect(found.reports[0]).toMatchObject({ format: 'evenfall-report' });
    expect(found.frames).toBe(1);
    expect(found.remembered).toEqual({ ready: { evennessPercent: 6 } });
  });

  it('goes through every migration since the version that is there, and loses nothing', async () => {
    const found = await inPage<{ steps: string[]; device: string; frames: number }>(
      `const steps = [];
       const first = journal();
       await first.keep(attempt());
       await first.close();
       const rename = async (database, upgrade) => {
         steps.push('2');
         const drawers = upgrade.objectStore('drawers');
         for (const key of await drawers.getAllKeys()) {
           await drawers.put((await drawers.get(key)).replace('"invented"', '"renamed"'), key);
         }
       };
       const addStore = (database) => { steps.push('3'); database.createObjectStore('later'); };
       const later = journal({ migrations: [...MIGRATIONS, rename, addStore] });
       const [entry] = await later.entries();
       const { channels } = await later.sound(entry.id);
       return { steps, device: entry.device, frames: channels[0].length };`,
    );
    expect(found).toEqual({ steps: ['2', '3'], device: 'renamed', frames: 4800 });
  });

  it('leaves the journal as it was where a migration fails', async () => {
    const found = await inPage<{ message: string; entries: number }>(
      `const first = journal();
       await first.keep(attempt());
       await first.close();
       const breaks = async (database, upgrade) => {
         await upgrade.objectStore('drawers').clear();
         throw new Error('no way');
       };
       const later = journal({ migrations: [...MIGRATIONS, breaks] });
       const message = await later.entries().then(() => 'opened', (error) => error.message);
       return { message, entries: (await journal().entries()).length };`,
    );
    expect(found.message).toMatch(/no way/);
    expect(found.entries).toBe(1);
  });

  it('says so when a newer page has the journal', async () => {
    const message = await inPage<string>(
      `const newer = journal({ migrations: [...MIGRATIONS, () => undefined] });
       await newer.entries();
       await newer.close();
       return journal().entries().then(() => 'opened', (error) => error.message);`,
    );
    expect(message).toMatch(/newer version of this page/);
  });
});

describe('the journal as one file', () => {
  it('goes out and comes in whole, into an empty journal', async () => {
    const found = await inPage<Record<string, unknown>>(
      `const one = journal({ databaseName: 'one' });
       for (let i = 0; i < 3; i += 1) {
         const { id } = await one.keep(attempt(i));
         if (i < 2) await one.complete(id, { report });
         if (i === 1) await one.forgetSound([id]);
       }
       const dropped = await one.keep(attempt(9));
       await one.remove([dropped.id]);
       await one.remember('ready', { evennessPercent: 6 });
       const shares = [];
       const file = await one.exportAll((share) => shares.push(share));
       const two = journal({ databaseName: 'two' });
       const outcome = await two.importFrom(file);
       const kept = (await one.entries()).filter((entry) => entry.deletedMs === null);
       const came = await two.entries();
       const sound = await two.sound(came[0].id);
       return { outcome, type: file.type, same: JSON.stringify(kept) === JSON.stringify(came), frames: sound.channels[0].length,
         states: came.map((entry) => entry.state), reports: (await two.reports(came.map((entry) => entry.id))).length,
         remembered: await two.remembered(), share: shares.at(-1) };`,
    );
    expect(found['outcome']).toEqual({ added: 3, same: 0, both: 0, refused: [] });
    expect(found).toMatchObject({ frames: 4800, reports: 2, share: 1, type: 'application/gzip' });
    expect(found['states']).toEqual(['told', 'told', 'unanalysed']);
    expect(found['remembered']).toEqual({ ready: { evennessPercent: 6 } });
  });

  it('adds nothing the second time, and never overwrites', async () => {
    const found = await inPage<Record<string, unknown>>(
      `const one = journal({ databaseName: 'one' });
       const { id } = await one.keep(attempt());
       await one.complete(id, { report });
       await one.remember('ready', { evennessPercent: 6 });
       const file = await one.exportAll();
       const again = await one.importFrom(file);
       const own = await one.importFrom(await one.exportAll(() => undefined, [{ of: 'mine' }]));
       await one.complete(id, { report: { ...report, targetBpm: 96 } });
       await one.remember('ready', { evennessPercent: 5 });
       const first = await one.importFrom(file);
       const second = await one.importFrom(file);
       const reports = await one.reports((await one.entries()).map((entry) => entry.id));
       return { again, own, first, second, tempi: reports.map((one) => one.targetBpm).sort(), remembered: await one.remembered() };`,
    );
    expect(found['again']).toEqual({ added: 0, same: 1, both: 0, refused: [] });
    // Passages of one's own go along as they are; whoever takes them looks what they are.
    expect(found['own']).toMatchObject({ same: 1, passages: [{ of: 'mine' }] });
    expect(found['first']).toEqual({ added: 0, same: 0, both: 1, refused: [] });
    expect(found['second']).toEqual({ added: 0, same: 1, both: 0, refused: [] });
    expect(found['tempi']).toEqual([80, 96]);
    expect(found['remembered']).toEqual({ ready: { evennessPercent: 5 } });
  });

  it('brings back what was deleted, and sound that was let go of', async () => {
    const found = await inPage<Record<string, unknown>>(
      `const one = journal();
       const { id } = await one.keep(attempt());
       const other = await one.keep(attempt(1));
       const file = await one.exportAll();
       await one.remove([id]);
       await one.forgetSound([other.id]);
       const outcome = await one.importFrom(file);
       const entries = await one.entries();
       return { outcome, deleted: entries.map((entry) => entry.deletedMs), bytes: entries.map((entry) => entry.soundBytes) };`,
    );
    expect(found).toEqual({
      outcome: { added: 1, same: 1, both: 0, refused: [] },
      deleted: [null, null],
      bytes: [9644, 9644],
    });
  });

  it('reads a file that breaks off as far as it goes, and says so', async () => {
    const found = await inPage<{ outcome: { added: number; refused: unknown[] } }>(
      `const one = journal({ databaseName: 'one' });
       for (let i = 0; i < 4; i += 1) await one.complete((await one.keep(attempt(i))).id, { report });
       const file = await one.exportAll();
       const outcome = await journal({ databaseName: 'two' }).importFrom(file.slice(0, Math.round(file.size * 0.6)));
       return { outcome };`,
    );
    expect(found.outcome.added).toBeGreaterThan(0);
    expect(found.outcome.added).toBeLessThan(4);
    expect(found.outcome.refused).toEqual([{ trouble: 'journal-breaks-off' }]);
  });

  it.each([
    ['is nothing at all', `new Blob([])`, /no journal/],
    ['is text', `new Blob(['Dear diary'.repeat(100)])`, /no journal/],
    ['is another archive', `await rawTar(['letter.txt', 'Hello'])`, /no journal/],
    [
      'comes from a newer version',
      `await rawTar(['evenfall-journal.json', JSON.stringify({ format: 'evenfall-journal', version: 2, remembered: {} })])`,
      /newer version/,
    ],
  ])('refuses a file that %s', async (_what, file, says) => {
    const message = await inPage<string>(
      `return journal().importFrom(${file}).then(() => 'taken', (error) => error.message);`,
    );
    expect(message).toMatch(says);
  });

  it('refuses what is wrong in a file and takes the rest, each with its reason', async () => {
    const found = await inPage<{ outcome: { added: number; refused: unknown[] }; bytes: number[] }>(
      `const id = (n) => '0mf1c2r8' + n + '-1a2b3c4d';
       const filed = (n, more = {}) => JSON.stringify({ id: id(n), name: 'x', remarks: [], device: null, choice: null,
         targetBpm: 80, durationSec: 6, reason: '', report, ...more });
       const named = (n, text) => ['attempts/' + id(n) + '/attempt.json', text];
       const far = { ...report, words: { ...report.words, steps: [999] } };
       const file = await rawTar(
         ['evenfall-journal.json', JSON.stringify({ format: 'evenfall-journal', version: 1, remembered: {} })],
         named(1, filed(1)),
         named(2, 'not json'),
         named(3, filed(3, { id: '../../3' })),
         named(4, filed(4, { report: far })),
         named(5, filed(5, { report: { ...report, notes: 'many' } })),
         ['attempts/' + id(5) + '/sound.wav', 'of what was left out'],
         named(6, filed(6, { choice: { key: 'H major', form: 'scale', hands: 'left', octaves: 1 } })),
         named(7, filed(7)),
         ['attempts/' + id(7) + '/sound.wav', 'no sound at all'],
         ['elsewhere/letter.txt', 'Hello'],
         named(8, filed(8, { targetBpm: -1 })),
       );
       const history = journal();
       const outcome = await history.importFrom(file);
       return { outcome, bytes: (await history.entries()).map((entry) => entry.soundBytes) };`,
    );
    expect(found.outcome.added).toBe(2);
    expect(found.bytes).toEqual([0, 0]);
    const whenMs = (n: number): number => timeIn(`0mf1c2r8${n}-1a2b3c4d`);
    const attemptAt = (n: number, place: string) => ({
      trouble: 'journal-attempt',
      whenMs: whenMs(n),
      place,
    });
    expect(found.outcome.refused).toEqual([
      attemptAt(2, 'attempt.json'),
      attemptAt(3, 'id'),
      attemptAt(4, 'report'),
      attemptAt(5, 'report.notes'),
      attemptAt(6, 'choice'),
      { trouble: 'journal-no-sound', whenMs: whenMs(7) },
      { trouble: 'journal-other' },
      attemptAt(8, 'targetBpm'),
    ]);
  });
});

/** Only so that the page's side is typed where it is looked up. */
declare global {
  interface Window {
    readonly door: Door;
  }
}
