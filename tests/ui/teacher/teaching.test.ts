import { describe, expect, it } from 'vitest';
import { printOf } from '../../../src/io/teaching/print.ts';
import { EvenfallError } from '../../../src/io/troubles/index.ts';
import type { Review } from '../../../src/io/review/index.ts';
import type { Playing } from '../../../src/io/teaching/index.ts';
import type { TeachingDevices } from '../../../src/ui/teacher/state/devices.ts';
import { choiceOf, kindOf } from '../../../src/ui/teacher/state/playings.ts';
import { Teaching } from '../../../src/ui/teacher/state/teaching.svelte.ts';
import { devicesWith, FILE, found, MemoryStore, REPORT, settled, SlowSorters, SORTED } from './rig.ts';

function currentAttempt(more: Partial<TeachingDevices> = {}, store = new MemoryStore()) {
  const sorters = new SlowSorters();
  return { teaching: new Teaching(devicesWith(store, sorters, more)), store, sorters };
}
const WRITTEN_MS = Date.UTC(2026, 10, 24, 15);
const given = (...paths: readonly string[]) =>
  paths.map((path) => ({ path, blob: FILE(), writtenMs: WRITTEN_MS }));
const names = ({ lists }: Teaching): readonly string[] => lists.students.map(({ name }) => name);
const member = (name: string, text = 'sound') => ({
  name,
  sizeBytes: text.length,
  head: (bytes: number) => Promise.resolve(new TextEncoder().encode(text.slice(0, bytes))),
  read: () => Promise.resolve(new TextEncoder().encode(text)),
});
/** What begins so is taken for a zip, in which these files lie. */
const archive = (...members: readonly ReturnType<typeof member>[]) =>
  currentAttempt({
    isArchive: async (file) => (await file.text()).startsWith('PK'),
    openArchive: () => Promise.resolve({ members, refused: [] }),
  });
const zipped = (path = 'week.zip') => [{ path, blob: FILE('PK'), writtenMs: null }];
const states = ({ lists }: Teaching): readonly string[] => lists.files.map(({ state }) => state);

describe('recordings that are given', () => {
  it('are sorted by student, and one bad file stops none of the others', async () => {
    const { teaching, sorters, store } = currentAttempt();
    await teaching.add(given('w/Mara/one.wav', 'w/Ilse/bad.wav', 'w/Mara/two.wav'));
    await settled();
    sorters.release(
      'w/Ilse/bad.wav',
      new EvenfallError({ trouble: 'within', name: 'w/Ilse/bad.wav', of: { trouble: 'no-mp3-frame' } }),
    );
    sorters.release('w/Mara/two.wav', SORTED(found(0), found(9)));
    sorters.release('w/Mara/one.wav', SORTED(found(0, null)));
    await settled();
    expect(names(teaching)).toEqual(['Ilse', 'Mara']);
    expect(states(teaching)).toEqual(['sorted', 'failed', 'sorted']);
    expect(teaching.lists.files[1]!.reason).toEqual({ trouble: 'no-mp3-frame' });
    const mara = teaching.lists.students[1]!;
    expect(teaching.attemptsOf(mara).map(kindOf).sort()).toEqual(['attempt', 'attempt', 'cannot-tell']);
    expect(teaching.queue.running).toBe(false);
    // All stay to be heard whole, talk and pauses and all, until they are let go of; what failed is kept to be tried again.
    expect([...store.waiting.keys()]).toEqual(teaching.lists.files.map(({ id }) => id));
    await teaching.lists.letGo(teaching.lists.files.filter(({ whole }) => whole === true));
    expect([...store.waiting.keys()]).toEqual([teaching.lists.files[1]!.id]);
  });

  it('know which hand a student plays where, once the teacher has said it', async () => {
    const { teaching, sorters, store } = currentAttempt();
    await teaching.add(given('w/Mara/one.wav'));
    await settled();
    expect(sorters.options.get('w/Mara/one.wav')?.handsPlayed).toEqual([]);
    sorters.release('w/Mara/one.wav', SORTED(found(0)));
    await settled();
    const [{ id }] = teaching.lists.playings as [Playing];
    const exercise = { ...REPORT.exercise, handLikelihood: { left: 0, right: 1 } };
    await store.putReports(id, { own: REPORT, chosen: { ...REPORT, exercise } });
    await teaching.lists.changePlayings([id], () => ({ chosen: choiceOf(REPORT) }));
    await teaching.add(given('w/Mara/two.wav', 'w/Ilse/three.wav'));
    await settled();
    const { form, hands } = REPORT.exercise;
    expect(sorters.options.get('w/Mara/two.wav')?.handsPlayed).toMatchObject([{ form, hand: hands }]);
    expect(sorters.options.get('w/Ilse/three.wav')?.handsPlayed).toEqual([]);
  });

  it('are tried again when that is asked for', async () => {
    const { teaching, sorters } = currentAttempt();
    await teaching.add(given('Mara - one.wav'));
    await settled();
    sorters.release('Mara - one.wav', new Error('Out of memory.'));
    await settled();
    const again = teaching.tryAgain(teaching.lists.files[0]!);
    await settled();
    sorters.release('Mara - one.wav', SORTED(found(0)));
    await again;
    expect(states(teaching)).toEqual(['sorted']);
  });

  it('are called off at once, wait, and are gone on with', async () => {
    const { teaching, sorters } = currentAttempt();
    await teaching.add(given('a.wav', 'b.wav'));
    await settled();
    teaching.queue.stop();
    await settled();
    expect([sorters.cancelled, states(teaching), teaching.queue.running]).toEqual([
      1,
      ['waiting', 'waiting'],
      false,
    ]);
    void teaching.queue.start();
    await settled();
    for (const name of ['a.wav', 'b.wav']) sorters.release(name, SORTED(found(0)));
    await settled();
    expect(states(teaching)).toEqual(['sorted', 'sorted']);
  });

  it('wait, and so do those that are still coming in, once somebody says stop', async () => {
    const { teaching } = currentAttempt();
    const adding = teaching.add(given('a.wav', 'b.wav'));
    teaching.queue.stop();
    await adding;
    await settled();
    expect([states(teaching), teaching.queue.running]).toEqual([['waiting', 'waiting'], false]);
  });

  it('are listed once where two windows listen to them', async () => {
    const { teaching, sorters, store } = currentAttempt();
    await teaching.add(given('Mara - one.wav'));
    await settled();
    const [file] = teaching.lists.files;
    await store.changeFiles([{ id: file!.id, fields: () => ({ state: 'sorted' }) }]);
    sorters.release('Mara - one.wav', SORTED(found(0)));
    await settled();
    expect(store.playings.size).toBe(0);
    expect(states(teaching)).toEqual(['sorted']);
  });

  it('go on after the page was closed', async () => {
    const store = new MemoryStore();
    const first = currentAttempt({}, store);
    await first.teaching.add(given('Mara - a.wav'));
    await settled();
    const second = currentAttempt({}, store);
    await second.teaching.load();
    await settled();
    second.sorters.release('Mara - a.wav', SORTED(found(0)));
    await settled();
    expect(states(second.teaching)).toEqual(['sorted']);
    expect(names(second.teaching)).toEqual(['Mara']);
  });

  it('are said to have failed where no room is left, and nothing is half kept', async () => {
    const { teaching, sorters, store } = currentAttempt();
    await teaching.add(given('a.wav'));
    await settled();
    store.full = true;
    sorters.release('a.wav', SORTED(found(0)));
    await settled();
    expect(teaching.lists.files[0]).toMatchObject({
      state: 'failed',
      reason: { trouble: 'unforeseen', detail: 'There is no room left.' },
    });
    expect([teaching.lists.playings, [...store.playings]]).toEqual([[], []]);
  });

  it('were played when their name says so, else when they were written', async () => {
    const { teaching } = currentAttempt();
    await teaching.add(given('Mara/AUD-20261101-WA0003.opus', 'Mara/thumb.wav'));
    expect(teaching.lists.files.map(({ writtenMs }) => writtenMs)).toEqual([
      new Date(2026, 10, 1).getTime(),
      WRITTEN_MS,
    ]);
  });

  it('have the moment of each attempt, or only its day where the name says no more', async () => {
    const { teaching, sorters } = currentAttempt();
    await teaching.add(given('w/Mara/2026-11-01.wav', 'w/Mara/thumb.wav'));
    await settled();
    sorters.release('w/Mara/2026-11-01.wav', SORTED(found(9)));
    sorters.release('w/Mara/thumb.wav', SORTED(found(9)));
    await settled();
    expect(teaching.lists.playings.map(({ whenMs }) => whenMs)).toEqual([
      new Date(2026, 10, 1).getTime(),
      WRITTEN_MS + 9000,
    ]);
  });

  it('are told to be the same where one is a copy of another, whatever it is called', async () => {
    const { teaching, sorters } = currentAttempt({ printOf });
    const named = (path: string, text: string) => ({ path, blob: FILE(text), writtenMs: null });
    await teaching.add([named('Mara - C.m4a', 'sound'), named('Copy of Mara - C.m4a', 'sound')]);
    await teaching.add([named('w/Ilse/again.m4a', 'sound'), named('Ilse.m4a', 'other sound')]);
    await settled();
    expect(states(teaching)).toEqual(['waiting', 'refused', 'refused', 'waiting']);
    expect(teaching.lists.files[2]!.reason).toEqual({ trouble: 'same-sound', name: 'Mara - C.m4a' });
    expect(sorters.asked).toHaveLength(2);
  });

  it('are two hundred at most, and it is said how many were left out', async () => {
    const { teaching, sorters } = currentAttempt();
    await teaching.add(given(...Array.from({ length: 203 }, (_, index) => `${index}.wav`)));
    expect([teaching.lists.files.length, teaching.leftOut]).toEqual([200, 3]);
    expect(sorters.asked.length).toBeLessThanOrEqual(4);
  });

  it('come out of a zip, hidden files left out; a refused zip says why', async () => {
    const opened = archive(
      member('Mara/a.wav'),
      member('__MACOSX/a'),
      member('Ilse/.DS_Store'),
      member('Ilse/Thumbs.db'),
    );
    await opened.teaching.add(zipped());
    expect(opened.teaching.lists.files.map(({ path }) => path)).toEqual(['week/Mara/a.wav']);
    expect(names(opened.teaching)).toEqual(['Mara']);
    expect(opened.teaching.passedOver).toBe(0);
    const refused = currentAttempt({
      isArchive: () => Promise.resolve(true),
      openArchive: () => Promise.reject(new Error('It would unpack to far more.')),
    });
    await refused.teaching.add(given('bomb.zip'));
    expect(refused.teaching.lists.files).toMatchObject([
      { state: 'refused', reason: { detail: 'It would unpack to far more.' } },
    ]);
    expect(refused.store.waiting.size).toBe(0);
  });
});

describe('what is no recording', () => {
  it('is passed over and counted, in a folder as in a zip; what should be sound is not', async () => {
    const { teaching } = archive(member('Mara/notes', 'Dear teacher'), member('Mara/no ending', 'OggS'));
    await teaching.add([...zipped(), ...given('w/notes.txt', 'w/desktop', 'w/Ilse/broken.m4a')]);
    expect(teaching.lists.files.map(({ path }) => path)).toEqual([
      'week/Mara/no ending',
      'w/Ilse/broken.m4a',
    ]);
    expect(teaching.passedOver).toBe(3);
    await teaching.add(given('w/Ilse/b.wav'));
    expect(teaching.passedOver).toBe(0);
  });

  it('is refused where it is an archive in an archive', async () => {
    const { teaching } = archive(member('Mara/more.zip', 'PK'), member('Mara/a.wav'));
    await teaching.add(zipped());
    expect(teaching.lists.files.map(({ path, state }) => [path, state])).toEqual([
      ['week/Mara/more.zip', 'refused'],
      ['week/Mara/a.wav', 'waiting'],
    ]);
  });
});

describe('attempts that a student sent', () => {
  const sent = {
    id: '0mabc1234-aaaa',
    whenMs: 5,
    name: 'at the piano',
    recognisedAs: null,
    remarks: [],
    corrections: [],
  };
  const sound = { bytes: new Uint8Array(9), mime: 'audio/webm' as const };
  const review: Review = {
    kind: 'attempts',
    id: 'x',
    madeMs: 6,
    student: 'Jo',
    teacher: '',
    words: 'The thumb is better.',
    attempts: [{ ...sent, report: REPORT, sound }],
    assignment: [],
  };
  const receiving = (kind: Review['kind']) =>
    currentAttempt({
      isArchive: () => Promise.resolve(true),
      isReview: () => Promise.resolve(true),
      readReview: () => Promise.resolve({ ...review, kind }),
    });

  it('are there at once with report, sound and what she wrote, and only once', async () => {
    const { teaching, store } = receiving('attempts');
    await teaching.add(given('jo.zip'));
    await teaching.add(given('jo.zip'));
    expect(teaching.lists.playings).toMatchObject([{ id: sent.id, whenMs: 5, soundBytes: 9 }]);
    expect(teaching.lists.students).toMatchObject([{ name: 'Jo', message: 'The thumb is better.' }]);
    expect(await store.sound(sent.id)).toEqual(sound);
  });

  it('are opened as what they are among recordings, in a zip too', async () => {
    const inside = [member('Mara/a.wav'), member('Jo/attempts.zip', 'PK review')];
    const { teaching } = currentAttempt({
      isArchive: async (file) => (await file.text()).startsWith('PK'),
      isReview: async (file) => (await file.text()).includes('review'),
      openArchive: () => Promise.resolve({ members: inside, refused: [] }),
      readReview: () => Promise.resolve(review),
    });
    await teaching.add(zipped());
    expect(teaching.lists.playings.map(({ id }) => id)).toEqual([sent.id]);
    expect(states(teaching)).toEqual(['waiting']);
    expect(names(teaching)).toEqual(['Jo', 'Mara']);
  });

  it('are told from a review, which is for the student', async () => {
    const { teaching } = receiving('review');
    await teaching.add(given('jo.zip'));
    expect(teaching.lists.files).toMatchObject([
      { state: 'refused', reason: { trouble: 'review-for-student' } },
    ]);
  });
});

describe('students', () => {
  async function two() {
    const made = currentAttempt();
    await made.teaching.add(given('w/Mara/a.wav', 'w/Ilse/b.wav', 'w/Ilse/c.wav'));
    await settled();
    for (const name of ['w/Mara/a.wav', 'w/Ilse/b.wav', 'w/Ilse/c.wav'])
      made.sorters.release(name, SORTED(found(0)));
    await settled();
    return made;
  }

  it('are called otherwise; one of the same name takes over', async () => {
    const { teaching } = await two();
    const [ilse, mara] = teaching.lists.students;
    await teaching.owners.rename(ilse!, ' Ilse L. ');
    expect(names(teaching)).toEqual(['Ilse L.', 'Mara']);
    await teaching.owners.rename(teaching.lists.students[0]!, 'Mara');
    expect(names(teaching)).toEqual(['Mara']);
    expect(teaching.attemptsOf(mara!)).toHaveLength(3);
  });

  it('are proposed by their names, known once the teacher has said so, and known by the old name too', async () => {
    const { teaching } = await two();
    const proposed = (): readonly string[] =>
      teaching.lists.students.filter((one) => one.proposed === true).map(({ name }) => name);
    expect(proposed()).toEqual(['Ilse', 'Mara']);
    const [ilse, mara] = teaching.lists.students;
    await teaching.owners.rename(ilse!, 'Ilse');
    await teaching.owners.rename(mara!, 'Mara Lind');
    expect(proposed()).toEqual([]);
    await teaching.add(given('next week/MARA/d.wav', 'Ilse - e.wav', 'Ilse L - f.wav', 'g.wav'));
    expect(names(teaching)).toEqual(['', 'Ilse', 'Ilse L', 'Mara Lind']);
    expect(proposed()).toEqual(['Ilse L']);
  });

  it('are put together, taken apart, and each is undone to the last record', async () => {
    const { teaching, store } = await two();
    const [ilse, mara] = teaching.lists.students;
    const asItWas = (): unknown => ({
      students: teaching.lists.students.map(({ name, aliases = [] }) => ({ name, aliases })),
      files: teaching.lists.files.map(({ path, studentId }) => ({ path, studentId })),
      playings: teaching.lists.playings.map(({ fileId, studentId }) => ({ fileId, studentId })),
    });
    const before = asItWas();
    await teaching.owners.rename(ilse!, 'mara');
    expect([names(teaching), teaching.attemptsOf(mara!).length]).toEqual([['Mara'], 3]);
    expect(teaching.lists.students[0]!.aliases).toEqual(['Ilse']);
    await teaching.owners.giveBack();
    expect(asItWas()).toEqual(before);
    await teaching.owners.moveTo([teaching.lists.files[1]!.id], 'Jo');
    expect(names(teaching)).toEqual(['Ilse', 'Jo', 'Mara']);
    await teaching.owners.giveBack();
    expect(asItWas()).toEqual(before);
    expect(store.students.size).toBe(2);
  });

  it('are given several recordings at once', async () => {
    const { teaching } = await two();
    await teaching.owners.moveTo(
      teaching.lists.files.slice(1).map(({ id }) => id),
      'Jo',
    );
    expect(names(teaching)).toEqual(['Jo', 'Mara']);
    expect(teaching.attemptsOf(teaching.lists.students[0]!)).toHaveLength(2);
  });

  it('are deleted with everything, brought back, and ended for good by the next deletion', async () => {
    const { teaching, store } = await two();
    const [ilse, mara] = teaching.lists.students;
    await teaching.lists.remove(teaching.lists.allOf(ilse!));
    expect([names(teaching), teaching.lists.playings.length]).toEqual([['Mara'], 1]);
    await teaching.restore();
    expect([names(teaching), teaching.lists.playings.length]).toEqual([['Ilse', 'Mara'], 3]);
    await teaching.lists.remove(teaching.lists.allOf(ilse!));
    await teaching.lists.remove(teaching.lists.allOf(mara!));
    expect([store.students.size, store.sounds.size, store.playings.size]).toEqual([1, 1, 1]);
    await teaching.lists.settle();
    expect(
      [store.students, store.files, store.playings, store.told, store.sounds].map(({ size }) => size),
    ).toEqual([0, 0, 0, 0, 0]);
  });
});
