import { describe, expect, it } from 'vitest';
import type { Assessment, ExerciseChoice, Hands } from '../../../src/engine/index.ts';
import { nameFor } from '../../../src/io/history/entry.ts';
import type { Entry, History } from '../../../src/io/history/index.ts';
import { EvenfallError } from '../../../src/io/troubles/index.ts';
import { earlierIds, othersIds, sittingOf, toWriteOut } from '../../../src/ui/attempt/entries.ts';
import { Journal } from '../../../src/ui/attempt/journal.svelte.ts';
import type { Sound } from '../../../src/ui/attempt/sound.ts';
import { DAY_MS, NOW_MS, summary } from '../../engine/standing/history.ts';
import { invent, INVENTED } from '../support/invent.ts';

const { exercise, report } = invent(INVENTED.lateThumb);
const AIM = { choice: exercise.choice, targetBpm: 80 };
const sound = (): Sound => ({
  channels: [new Float32Array(480)],
  sampleRateHz: 48_000,
  name: 'your recording',
  recordedHere: true,
  remarks: [],
});
// Of an assessment the journal looks at its kind and its report only.
const told = { kind: 'report', report } as Assessment;

const NOTHING_KEPT = { trouble: 'keeps-nothing', keeper: 'journal' } as const;

/** A store that refuses everything, as in a private window. */
const refusing = new Proxy({} as History, {
  get: () => () => Promise.reject(new EvenfallError(NOTHING_KEPT)),
});

function journalWithoutStore(history: History | null = null): Journal {
  let clockMs = NOW_MS;
  return new Journal(history, () => (clockMs += 1000));
}

describe.each([
  ['none', null],
  ['one that refuses', refusing],
] as const)('a journal whose store is %s', (_name, history) => {
  it('remembers attempts until the page is closed', async () => {
    const journal = journalWithoutStore(history);
    const first = await journal.keep(sound(), AIM);
    expect(journal.shown.map(({ state }) => state)).toEqual(['unanalysed']);
    await journal.complete(first, told);
    const second = await journal.keep(sound(), AIM);
    expect(journal.shown.map(({ state }) => state)).toEqual(['told', 'unanalysed']);
    expect(await journal.earlier(exercise.choice, second)).toEqual([report]);
    expect(await journal.earlier(exercise.choice, first)).toEqual([]);
    expect((await journal.open(first))?.report).toEqual(report);
    expect(journal.trouble).toEqual(history === null ? null : NOTHING_KEPT);
  });
});

describe('a journal that could not be read', () => {
  const held = { entries: async () => [], remembered: async () => ({}), storage: async () => null };
  const reading = (history: object): Journal => journalWithoutStore(history as unknown as History);

  it('is unread, also once that was told and put away; one that was read and is empty is not', async () => {
    const [newer, empty] = [reading(refusing), reading(held)];
    expect([newer.unread, empty.unread]).toEqual([false, false]);
    await newer.load();
    await empty.load();
    newer.dismissTrouble();
    expect([newer.unread, newer.shown, newer.trouble]).toEqual([true, [], null]);
    expect([empty.unread, empty.shown]).toEqual([false, []]);
  });

  it('is read once its store answers again', async () => {
    let answers = false;
    const file = new Blob();
    const journal = reading({
      ...held,
      entries: () => (answers ? held.entries() : Promise.reject(new EvenfallError(NOTHING_KEPT))),
      importFrom: async () => ({ added: 0, same: 0, both: 0, refused: [] }),
    });
    await journal.load();
    expect(journal.unread).toBe(true);
    answers = true;
    await journal.importFrom(file);
    expect(journal.unread).toBe(false);
  });
});

describe('the journal', () => {
  it('has each sound once, however often it is listened to', async () => {
    const journal = journalWithoutStore();
    const one = sound();
    expect(await journal.keep(one, AIM)).toBe(await journal.keep(one, AIM));
    expect(journal.shown).toHaveLength(1);
    expect(journal.nameOf(one)).toBe(journal.shown[0]!.id);
    expect(journal.nameOf(sound())).toBeNull();
  });

  it('says of an attempt without a report why it has none', async () => {
    const journal = journalWithoutStore();
    const id = await journal.keep(sound(), AIM);
    await journal.complete(id, { kind: 'no-playing', reason: { notice: 'silence' } } as Assessment);
    expect(journal.shown[0]).toMatchObject({
      state: 'no-report',
      reason: { notice: 'silence' },
      summary: null,
    });
    expect(journal.practised).toEqual([]);
  });

  it('takes a deleted attempt out of all that is judged, and puts it back', async () => {
    const journal = journalWithoutStore();
    const id = await journal.keep(sound(), AIM);
    await journal.complete(id, told);
    await journal.remove([id]);
    expect([journal.shown.length, journal.deleted.length, journal.practised.length]).toEqual([0, 1, 0]);
    await journal.restore([id]);
    expect([journal.shown.length, journal.deleted.length, journal.practised.length]).toEqual([1, 0, 1]);
  });

  it('keeps what counts as ready within its limits', async () => {
    const journal = journalWithoutStore();
    await journal.standards.setBounds({ evennessPercent: 6, readyInARow: 50 });
    expect(journal.standards.criteria).toMatchObject({ evennessPercent: 6, readyInARow: 10 });
    await journal.standards.setBounds({});
    expect(journal.standards.bounds).toMatchObject({ evennessPercent: 8, readyInARow: 3 });
  });
});

const entry = (index: number, choice: ExerciseChoice, more: Partial<Entry> = {}): Entry => {
  const whenMs = NOW_MS + index * DAY_MS;
  return {
    id: nameFor(whenMs, 'abcd'),
    whenMs,
    state: 'told',
    name: 'x',
    remarks: [],
    device: null,
    choice,
    targetBpm: 80,
    durationSec: 6,
    soundBytes: 0,
    reason: '',
    summary: summary(choice),
    deletedMs: null,
    ...more,
  };
};
const SCALE = (hands: Hands, key = 'D major'): ExerciseChoice => ({ key, form: 'scale', hands, octaves: 2 });

describe('the attempts that a report is compared with', () => {
  const entries = [
    ...Array.from({ length: 20 }, (_, index) => entry(index, SCALE('right'))),
    entry(20, SCALE('left')),
    entry(21, SCALE('right', 'A major')),
    entry(22, SCALE('together')),
    entry(23, SCALE('right'), { state: 'no-report', summary: null }),
  ];
  const places = (ids: readonly string[]): readonly number[] =>
    ids.map((id) => entries.findIndex((one) => one.id === id));

  it('are the last of each hand, oldest first, of the same exercise', () => {
    expect(places(earlierIds(entries, SCALE('together'), null))).toEqual([
      12, 13, 14, 15, 16, 17, 18, 19, 20, 22,
    ]);
  });

  it('lie before the one that is told', () => {
    expect(places(earlierIds(entries, SCALE('right'), entries[10]!.id))).toEqual([2, 3, 4, 5, 6, 7, 8, 9]);
  });

  it('are the last of all where the exercise is to be recognised', () => {
    expect(places(earlierIds(entries, null, null))).toEqual([...Array(23).keys()]);
  });

  it('belong to one sitting as long as no half hour lies between two of them', () => {
    const MINUTE_MS = 60_000;
    const row = [0, 40, 45, 75, 80].map((minutes) =>
      entry(0, SCALE('right'), { id: `at ${minutes}`, whenMs: NOW_MS + minutes * MINUTE_MS }),
    );
    const names = row.map(({ id }) => id);
    const at = (minutes: number): number => sittingOf(row, names, NOW_MS + minutes * MINUTE_MS);
    expect(at(85)).toBe(4);
    expect(at(110)).toBe(4);
    expect(at(111)).toBe(0);
    expect(sittingOf(row, names.slice(0, 1), NOW_MS + 30 * MINUTE_MS)).toBe(1);
    expect(sittingOf(row, [], NOW_MS)).toBe(0);
  });

  it('are worth a reminder once fifty are in no file, or five for a month', () => {
    const DAY_MS = 86_400_000;
    const row = (count: number) =>
      Array.from({ length: count }, (_, at) => entry(at, SCALE('right'), { whenMs: NOW_MS + at }));
    const now = NOW_MS + 100;
    expect([toWriteOut(row(49), 0, now), toWriteOut(row(50), 0, now)]).toEqual([0, 50]);
    expect(toWriteOut(row(50), NOW_MS, now)).toBe(0);
    expect(toWriteOut(row(5), 0, NOW_MS + 31 * DAY_MS)).toBe(5);
    expect(toWriteOut(row(4), 0, NOW_MS + 31 * DAY_MS)).toBe(0);
    expect(toWriteOut([], 0, now)).toBe(0);
  });

  it('come before, and have the same hands, where two are laid side by side', () => {
    expect(places(othersIds(entries, entries[15]!.id)).at(-1)).toBeLessThan(15);
    expect(places(othersIds(entries, entries[19]!.id))).toEqual([11, 12, 13, 14, 15, 16, 17, 18]);
    expect(othersIds(entries, entries[20]!.id)).toEqual([]);
    expect(othersIds(entries, 'nobody')).toEqual([]);
  });
});
