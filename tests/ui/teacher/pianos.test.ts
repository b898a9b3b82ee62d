import { describe, expect, it } from 'vitest';
import { learnPiano, withPrinciple } from '../../../src/engine/index.ts';
import type { Assessment, ExerciseChoice, Report } from '../../../src/engine/index.ts';
import type { SortedAttempt } from '../../../src/io/sorting/index.ts';
import type { TeachingDevices } from '../../../src/ui/teacher/state/devices.ts';
import { Teaching } from '../../../src/ui/teacher/state/teaching.svelte.ts';
import { devicesWith, FILE, found, MemoryStore, REPORT, settled, SlowSorters, SORTED } from './rig.ts';

/** One exercise on a piano, as it is told: an E flat that a piano of 72 cents flat makes of a D. */
const told = (key: ExerciseChoice['key'], cents: number): Report => ({
  ...REPORT,
  exercise: { ...REPORT.exercise, key },
  tuning: { ...REPORT.tuning, cents },
  notes: REPORT.notes.map((note) => ({ ...note, verdict: 'correct' })),
  missed: [],
});
const AS_HEARD = told('Eb major', 28);
const AS_SAID = told('D major', -72);
/** what the teacher's word on an attempt makes of it */
const analyst = { report: AS_SAID };
const SAID: ExerciseChoice = { key: 'D major', form: 'scale', hands: 'right', octaves: 2 };
const TAUGHT = learnPiano({
  findings: [],
  notes: [60, 62, 64].map((midi) => ({
    timeSec: midi - 60,
    midi,
    cents: 0,
    levelDb: -20,
    confidence: 1,
    releaseSec: null,
  })),
  tuning: { cents: 28, a4Hz: 440, sdCents: 1, strays: [] },
})!;

/** A student's recordings, each with one attempt in it as it was heard, and a teacher who says that it was D major. */
async function handedIn(attempts: Readonly<Record<string, SortedAttempt>>) {
  analyst.report = AS_SAID;
  const store = new MemoryStore();
  const sorters = new SlowSorters();
  const asSaid: TeachingDevices['analyst'] = {
    analyse: () => Promise.resolve({ kind: 'report', report: analyst.report } as Assessment),
    cancel: () => undefined,
    close: () => undefined,
  };
  const teaching = new Teaching(devicesWith(store, sorters, { analyst: asSaid }));
  await give(teaching, sorters, attempts);
  return { teaching, store, sorters };
}

async function give(
  teaching: Teaching,
  sorters: SlowSorters,
  attempts: Readonly<Record<string, SortedAttempt>>,
): Promise<void> {
  const paths = Object.keys(attempts).map((name) => `w/Mara/${name}`);
  await teaching.add(paths.map((path) => ({ path, blob: FILE(path), writtenMs: null })));
  await settled();
  for (const [at, path] of paths.entries()) sorters.release(path, SORTED(Object.values(attempts)[at]!));
  await settled();
}

async function correct(teaching: Teaching, name: string): Promise<void> {
  await teaching.open(teaching.lists.playings.find((one) => one.name === name)!);
  await teaching.hearing!.measureAs(SAID);
  await settled();
}
const keyOf = ({ lists }: Teaching, name: string): unknown =>
  lists.playings.find((one) => one.name === name)?.summary?.exercise.key;

describe('the piano of a student', () => {
  it('is settled by one correction: what was read a semitone off is read anew, and what comes is read so', async () => {
    const { teaching, sorters, store } = await handedIn({
      'a.wav': found(0, AS_HEARD),
      'b.wav': found(0, AS_HEARD),
      'c.wav': found(0, told('C major', 2)),
      'd.wav': found(0, null),
    });
    await correct(teaching, 'a.wav');
    const [mara] = teaching.lists.students;
    expect(mara!.piano).toEqual({ cents: -72, by: teaching.lists.playings[0]!.id });
    // Another piano's recording stays as it is; what could not be told is tried again.
    expect(teaching.pianos.reading).toEqual({ [mara!.id]: { done: 0, of: 2 } });
    expect(sorters.options.get('b.wav')).toMatchObject({ pianoCents: -72 });
    sorters.release('b.wav', SORTED(found(0, AS_SAID)));
    await settled();
    sorters.release('d.wav', SORTED(found(0, AS_SAID)));
    await settled();
    expect(['a.wav', 'b.wav', 'c.wav', 'd.wav'].map((name) => keyOf(teaching, name))).toEqual([
      'D major',
      'D major',
      'C major',
      'D major',
    ]);
    expect((await store.reports(teaching.lists.playings[1]!.id)).own).toEqual(AS_SAID);
    expect(teaching.pianos.reading).toEqual({});
    await give(teaching, sorters, { 'e.wav': found(0, AS_SAID) });
    expect(sorters.options.get('w/Mara/e.wav')).toMatchObject({ pianoCents: -72 });
  });

  it('is forgotten with the correction, and its recordings are read as at first', async () => {
    const { teaching, sorters } = await handedIn({
      'a.wav': found(0, AS_HEARD),
      'b.wav': found(0, AS_HEARD),
    });
    await correct(teaching, 'a.wav');
    sorters.release('b.wav', SORTED(found(0, AS_SAID)));
    await settled();
    await teaching.hearing!.takeOwn();
    await settled();
    expect(teaching.lists.students[0]!.piano).toBeNull();
    expect(sorters.options.get('b.wav')).toMatchObject({ pianoCents: null });
    sorters.release('b.wav', SORTED(found(0, AS_HEARD)));
    await settled();
    expect([keyOf(teaching, 'a.wav'), keyOf(teaching, 'b.wav')]).toEqual(['Eb major', 'Eb major']);
  });

  it('is one of several: a second correction on another piano leaves what is known of the first', async () => {
    const { teaching, sorters } = await handedIn({
      'a.wav': found(0, told('Eb major', 9)),
      'b.wav': found(0, told('E major', 4)),
      'c.wav': found(0, told('Eb major', -93)),
    });
    analyst.report = told('D major', -91);
    await correct(teaching, 'a.wav');
    sorters.release('b.wav', SORTED(found(0, told('Eb major', -96))));
    await settled();
    // The school's piano, in tune: it was E flat's neighbour after all.
    analyst.report = told('E major', 4);
    await correct(teaching, 'b.wav');
    const [mara] = teaching.lists.students;
    expect(mara).toMatchObject({ piano: { cents: 4 }, elsewhere: [{ cents: -91 }] });
    expect(['a.wav', 'b.wav', 'c.wav'].map((name) => keyOf(teaching, name))).toEqual([
      'D major',
      'E major',
      'Eb major',
    ]);
    expect(teaching.pianos.reading).toEqual({});
    await teaching.hearing!.takeOwn();
    await settled();
    expect(teaching.lists.students[0]).toMatchObject({ piano: { cents: -91 }, elsewhere: [] });
  });

  it('is not settled by another hand or form of the key that was heard', async () => {
    const { teaching } = await handedIn({ 'a.wav': found(0, AS_SAID), 'b.wav': found(0, AS_SAID) });
    await correct(teaching, 'a.wav');
    expect(teaching.lists.students[0]!.piano).toBeUndefined();
    expect(teaching.pianos.reading).toEqual({});
  });

  it('goes on being read anew after the page was closed', async () => {
    const first = await handedIn({ 'a.wav': found(0, AS_HEARD), 'b.wav': found(0, AS_HEARD) });
    await correct(first.teaching, 'a.wav');
    const sorters = new SlowSorters();
    const again = new Teaching(devicesWith(first.store, sorters));
    await again.load();
    await settled();
    sorters.release('b.wav', SORTED(found(0, AS_SAID)));
    await settled();
    expect(keyOf(again, 'b.wav')).toBe('D major');
  });

  it('is told by its keys: each recording beside what the student’s others taught', async () => {
    const { teaching, sorters } = await handedIn({ 'a.wav': { ...found(0, AS_HEARD), taught: TAUGHT } });
    expect(sorters.options.get('w/Mara/a.wav')?.piano).toBeNull();
    await give(teaching, sorters, { 'b.wav': found(0, AS_HEARD) });
    expect(sorters.options.get('w/Mara/b.wav')?.piano).toEqual(TAUGHT);
    expect(Object.keys(TAUGHT.keys)).toEqual(['60', '62', '64']);
  });
});

describe('under which fingers a student plays', () => {
  it('is what was assigned, then what the teacher keeps', async () => {
    const { teaching, sorters } = await handedIn({ 'a.wav': found(0, AS_SAID) });
    expect(sorters.options.get('w/Mara/a.wav')?.fingerings).toEqual([]);
    const assigned = withPrinciple(
      { key: 'Ab major', form: 'scale', hands: 'left', octaves: 2 },
      'left',
      'thumbs-together',
    );
    const [mara] = teaching.lists.students;
    await teaching.lists.changeStudent(mara!.id, () => ({
      assignment: [assigned, SAID].map((exercise) => ({
        ...{ exercise, targetBpm: null, inARow: null, evennessPercent: null, note: '' },
      })),
    }));
    teaching.devices.fingerings.keep(withPrinciple({ ...assigned, key: 'Bb major' }, 'left', 'as-in-c'));
    await give(teaching, sorters, { 'b.wav': found(0, AS_SAID) });
    expect(sorters.options.get('w/Mara/b.wav')?.fingerings).toEqual([
      assigned,
      ...teaching.devices.fingerings.kept,
    ]);
  });
});
