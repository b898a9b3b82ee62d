import { describe, expect, it } from 'vitest';
import type { Assessment } from '../../../src/engine/index.ts';
import { withExamples } from '../../../src/io/review/index.ts';
import type { RemarkPlace, Remark } from '../../../src/io/review/index.ts';
import type { Playing } from '../../../src/io/teaching/index.ts';
import { moved } from '../../../src/ui/teacher/state/places.ts';
import { toldBy } from '../../../src/io/teaching/told.ts';
import { sentBy } from '../../../src/ui/teacher/state/playings.ts';
import { reviewOf, roundOf } from '../../../src/ui/teacher/state/review.ts';
import { Teaching } from '../../../src/ui/teacher/state/teaching.svelte.ts';
import { invent } from '../support/invent.ts';
import {
  devicesWith,
  EXERCISE,
  FILE,
  found,
  MemoryStore,
  REPORT,
  settled,
  SlowSorters,
  SORTED,
  SOUND,
} from './rig.ts';

const OTHER = invent({ choice: { ...EXERCISE.choice, key: 'Eb major' } });
const NOTE: RemarkPlace = {
  kind: 'note',
  step: 4,
  midi: REPORT.notes[4]!.midi,
  timeSec: REPORT.notes[4]!.timeSec,
};
const remark = (id: string, place: RemarkPlace, text = 'Earlier.'): Remark => ({
  id,
  place,
  text,
  voice: null,
});

async function opened() {
  const store = new MemoryStore();
  const sorters = new SlowSorters();
  const devices = devicesWith(store, sorters, {
    analyst: {
      analyse: () => Promise.resolve({ kind: 'report', report: OTHER.report } as Assessment),
      cancel: () => undefined,
      close: () => undefined,
    },
  });
  const teaching = new Teaching(devices);
  await teaching.add([{ path: 'Mara - a.wav', blob: FILE(), writtenMs: 1 }]);
  await settled();
  sorters.release('Mara - a.wav', SORTED(found(0), found(9)));
  await settled();
  const [first, second] = teaching.lists.playings;
  await teaching.open(second!);
  return { teaching, store, devices, sorters, hearing: teaching.hearing!, first: first! };
}

describe('an attempt that is heard', () => {
  it('has what the teacher played as an example beside it, which goes along in the review', async () => {
    const { hearing, store, devices, teaching } = await opened();
    const { id } = hearing.playing;
    const sound = await hearing.heardExample(SOUND);
    expect(hearing.said.example).toMatchObject({ report: OTHER.report, sound });
    expect((await store.said(id)).example).toEqual(hearing.said.example);
    await hearing.remark(remark('r1', NOTE));
    expect(hearing.said.example?.sound).toEqual(sound);
    const options = { teacher: '', withSound: false, round: null };
    const review = await reviewOf(devices, teaching.lists.students[0]!, [hearing.playing], options);
    expect(withExamples(review)).toMatchObject([
      { attempt: { id }, example: { report: OTHER.report, sound } },
    ]);
    await hearing.removeExample();
    expect(hearing.said.example).toBeNull();
    await hearing.takeBack();
    expect(hearing.said).toMatchObject({ example: { sound }, remarks: [{ id: 'r1' }] });
  });

  it('keeps what another window says meanwhile, whatever is said, removed and taken back here', async () => {
    const { hearing, store } = await opened();
    const { id } = hearing.playing;
    const elsewhere = (one: Remark): Promise<unknown> =>
      store.changeSaid(id, (said) => ({ ...said, remarks: [...said.remarks, one] }));
    await hearing.remark(remark('a', NOTE));
    await elsewhere(remark('b', { kind: 'attempt' }));
    await hearing.remark(remark('c', NOTE));
    await elsewhere(remark('d', { kind: 'attempt' }));
    await hearing.removeRemark('a');
    await elsewhere(remark('e', { kind: 'attempt' }));
    await hearing.takeBack();
    await hearing.correct({ place: NOTE, verdict: 'correct', why: '' });
    const said = await store.said(id);
    expect(said.remarks.map((one) => one.id).sort()).toEqual(['a', 'b', 'c', 'd', 'e']);
    expect(hearing.said).toEqual(said);
    expect(hearing.playing.remarks).toBe(6);
  });

  it('keeps both where one remark is changed in two windows, and follows what the other one says', async () => {
    const { hearing, store } = await opened();
    const { id } = hearing.playing;
    const before = remark('a', NOTE);
    await hearing.remark(before);
    const theirs = { ...before, text: 'theirs' };
    await store.changeSaid(id, (said) => ({ ...said, remarks: [theirs] }));
    await hearing.remark({ ...before, text: 'mine' }, before);
    expect((await store.said(id)).remarks.map(({ text }) => text)).toEqual(['theirs', 'mine']);
    await store.changeSaid(id, (said) => ({ ...said, remarks: [theirs] }));
    store.changed({ students: [], files: [], playings: [id] });
    await settled();
    expect(hearing.said.remarks).toEqual([theirs]);
  });

  it('says that a remark could not be kept where the device is full, and does not show it as said', async () => {
    const { hearing, store, teaching } = await opened();
    store.full = true;
    expect(await hearing.remark(remark('a', NOTE))).toBe(false);
    expect(hearing.said.remarks).toEqual([]);
    expect(teaching.lists.trouble).not.toBeNull();
    store.full = false;
    expect(await hearing.remark(remark('a', NOTE))).toBe(true);
    expect(hearing.said.remarks).toHaveLength(1);
  });

  it('has its report, its sound and the earlier attempts of the same exercise', async () => {
    const { hearing, first } = await opened();
    expect([hearing.report, hearing.sound?.sampleRateHz]).toEqual([REPORT, 48_000]);
    expect(hearing.others).toMatchObject([{ whenMs: first.whenMs }]);
    expect(hearing.playing.heardMs).toBeNull();
    await hearing.heard();
    expect(hearing.playing.heardMs).not.toBeNull();
  });

  it('keeps remarks, changes them in their place, and brings a deleted one back', async () => {
    const { hearing, store, teaching } = await opened();
    await hearing.remark(remark('a', NOTE));
    await hearing.remark(remark('b', { kind: 'attempt' }));
    await hearing.remark(remark('a', NOTE, 'Later.'));
    expect(hearing.said.remarks.map(({ id, text }) => `${id} ${text}`)).toEqual(['a Later.', 'b Earlier.']);
    await hearing.removeRemark('a');
    expect(hearing.said.remarks).toHaveLength(1);
    await hearing.takeBack();
    expect((await store.said(hearing.playing.id)).remarks).toHaveLength(2);
    expect(teaching.lists.playings.find(({ id }) => id === hearing.playing.id)?.remarks).toBe(2);
  });

  it('is corrected beside the tool’s own word: the report stays as it was', async () => {
    const { hearing, store } = await opened();
    await hearing.correct({ place: NOTE, verdict: 'wrong', why: 'It was A.' });
    await hearing.correct({ place: NOTE, verdict: 'missed', why: '' });
    expect(hearing.said.corrections).toEqual([{ place: NOTE, verdict: 'missed', why: '' }]);
    expect((await store.reports(hearing.playing.id)).own).toEqual(REPORT);
    await hearing.removeCorrection(NOTE);
    expect(hearing.said.corrections).toEqual([]);
  });

  it('is measured as another exercise, and both readings are kept', async () => {
    const { hearing, store } = await opened();
    await hearing.measureAs(OTHER.exercise.choice);
    expect(hearing.report).toEqual(OTHER.report);
    expect(await store.reports(hearing.playing.id)).toEqual({ own: REPORT, chosen: OTHER.report });
    expect(hearing.playing).toMatchObject({ chosen: OTHER.exercise.choice, ...toldBy(OTHER.report) });
    await hearing.measureAs(EXERCISE.choice);
    expect([hearing.report, hearing.playing.chosen]).toEqual([REPORT, null]);
  });

  it('says what went wrong where it cannot be measured so, and stays as it was', async () => {
    const { hearing, devices } = await opened();
    devices.analyst.analyse = () => Promise.reject(new Error('The engine failed.'));
    await hearing.measureAs(OTHER.exercise.choice);
    expect([hearing.trouble, hearing.report, hearing.measuring]).toEqual([
      { trouble: 'unforeseen', detail: 'The engine failed.' },
      REPORT,
      null,
    ]);
  });
});

describe('what was said of one reading', () => {
  it('is found again in another by its sound; what is not found belongs to the whole', () => {
    const stretch: RemarkPlace = { kind: 'stretch', fromStep: 2, toStep: 5 };
    const said = {
      remarks: [
        remark('a', NOTE),
        remark('b', stretch),
        remark('c', { kind: 'note', step: 1, midi: 30, timeSec: 2 }),
      ],
      corrections: [
        { place: NOTE, verdict: 'wrong' as const, why: '' },
        {
          place: { kind: 'note', step: 1, midi: 30, timeSec: null } as const,
          verdict: 'missed' as const,
          why: '',
        },
      ],
    };
    const shifted = { ...REPORT, notes: REPORT.notes.map((note) => ({ ...note, step: note.step! + 1 })) };
    const after = moved(said, shifted);
    expect(after.remarks.map(({ place }) => place)).toEqual([
      { ...NOTE, step: 5 },
      { kind: 'attempt' },
      { kind: 'attempt' },
    ]);
    expect(after.corrections.map(({ place }) => place)).toEqual([{ ...NOTE, step: 5 }]);
  });
});

describe('a review', () => {
  it('holds what was said, both readings and the assignment; sound is made small, and what came small stays', async () => {
    const { hearing, teaching, devices, store } = await opened();
    await hearing.remark(remark('a', NOTE));
    await hearing.measureAs(OTHER.exercise.choice);
    const [student] = teaching.lists.students;
    const sent = sentBy(
      student!.id,
      {
        id: '0mabc1234-bbbb',
        whenMs: 3,
        name: 'at the piano',
        report: REPORT,
        recognisedAs: null,
        sound: { bytes: new Uint8Array(7), mime: 'audio/webm' },
        remarks: [],
        corrections: [],
      },
      4,
    );
    await store.addPlayings([sent]);
    const assigned = {
      exercise: EXERCISE.choice,
      targetBpm: 84,
      inARow: 3,
      evennessPercent: null,
      note: 'Slowly.',
    };
    const review = await reviewOf(
      devices,
      { ...student!, words: 'Well done.', assignment: [assigned] },
      [hearing.playing, sent.playing],
      { teacher: 'A teacher', withSound: true, round: null },
    );
    expect(review).toMatchObject({
      kind: 'review',
      student: 'Mara',
      teacher: 'A teacher',
      words: 'Well done.',
    });
    expect(review.assignment).toEqual([assigned]);
    expect(review.attempts.map(({ sound }) => sound?.bytes.length)).toEqual([96, 7]);
    expect(review.attempts[0]).toMatchObject({ report: OTHER.report, recognisedAs: EXERCISE.choice });
    expect(review.attempts[0]!.remarks).toHaveLength(1);
    const silent = await reviewOf(devices, student!, [hearing.playing], {
      teacher: '',
      withSound: false,
      round: null,
    });
    expect(silent.attempts[0]!.sound).toBeNull();
  });

  it('made again has the same name while nothing new has come in and nothing is left out', async () => {
    const { devices, teaching, sorters } = await opened();
    const student = teaching.lists.students[0]!;
    const [one, two] = teaching.attemptsOf(student);
    const options = { teacher: '', withSound: false };
    expect(roundOf(student, [one!, two!], [one!])).toBeNull();
    const { id, madeMs } = await reviewOf(devices, student, [], { ...options, round: null });
    const answered = { ...student, sent: [{ id, madeMs, fileName: 'a.zip', attempts: [one!.id] }] };
    const round = (...chosen: readonly Playing[]) => roundOf(answered, teaching.attemptsOf(student), chosen);
    expect([round(one!), round(one!, two!), round(two!), round()]).toEqual([id, id, null, null]);
    expect((await reviewOf(devices, student, [], { ...options, round: id })).id).toBe(id);
    await teaching.add([{ path: 'Mara - later.wav', blob: FILE(), writtenMs: 1 }]);
    await settled();
    sorters.release('Mara - later.wav', SORTED(found(0)));
    await settled();
    expect(round(one!)).toBeNull();
  });
});
