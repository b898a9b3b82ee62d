import { describe, expect, it } from 'vitest';
import type { AssessOptions, Assessment, HandsAlone, Report } from '../../../src/engine/index.ts';
import type { SortedAttempt } from '../../../src/io/sorting/index.ts';
import type { TeachingDevices } from '../../../src/ui/teacher/state/devices.ts';
import { Teaching } from '../../../src/ui/teacher/state/teaching.svelte.ts';
import { devicesWith, FILE, found, MemoryStore, REPORT, settled, SlowSorters, SORTED } from './rig.ts';

const DAY = new Date(2026, 10, 24, 15).getTime();
const NEXT_DAY = new Date(2026, 10, 25, 15).getTime();
const TAUGHT: HandsAlone = { '48>60': [{ seen: 'A'.repeat(256) }] };

const TOGETHER: Report = { ...REPORT, exercise: { ...REPORT.exercise, hands: 'together' } };
/** as it is told beside hands alone */
const SURER: Report = { ...TOGETHER, words: { ...TOGETHER.words, verdict: 'Surer.' } };
const both = (): SortedAttempt => found(0, TOGETHER);
const left = (): SortedAttempt => ({ ...found(0), alone: TAUGHT });

/** Recordings of one student, by name, each with when it was written and what is found in it; in the order in which they are done. */
async function handedIn(
  files: Readonly<Record<string, readonly [number, SortedAttempt]>>,
  before: (name: string, teaching: Teaching) => Promise<void> = async () => undefined,
) {
  const store = new MemoryStore();
  const sorters = new SlowSorters();
  const asked: (HandsAlone | null | undefined)[] = [];
  const analyst: TeachingDevices['analyst'] = {
    analyse: (_sound, _choice, options: Partial<AssessOptions>) => {
      asked.push(options.alone);
      return Promise.resolve({ kind: 'report', report: SURER } as Assessment);
    },
    cancel: () => undefined,
    close: () => undefined,
  };
  const teaching = new Teaching(devicesWith(store, sorters, { analyst }));
  await teaching.add(
    Object.entries(files).map(([name, [writtenMs]]) => ({ path: `w/Mara/${name}`, blob: FILE(), writtenMs })),
  );
  await settled();
  for (const [name, [, attempt]] of Object.entries(files)) {
    await before(name, teaching);
    sorters.release(`w/Mara/${name}`, SORTED(attempt));
    await settled();
  }
  const verdicts = teaching.lists.playings.map(({ verdict }) => verdict);
  return { asked, verdicts, store, teaching };
}

describe('both hands among recordings of one student', () => {
  it.each<[string, Readonly<Record<string, readonly [number, SortedAttempt]>>]>([
    ['before', { 'left.wav': [DAY, left()], 'both.wav': [DAY + 9, both()] }],
    ['after', { 'both.wav': [DAY, both()], 'left.wav': [DAY + 9, left()] }],
  ])('are listened to again beside hands alone that came %s them that day', async (_, files) => {
    const { asked, verdicts, store, teaching } = await handedIn(files);
    expect(asked).toEqual([TAUGHT]);
    expect(verdicts.filter((verdict) => verdict === 'Surer.')).toHaveLength(1);
    const { id } = teaching.lists.playings.find(({ verdict }) => verdict === 'Surer.')!;
    expect((await store.reports(id)).own).toEqual(SURER);
    expect(teaching.queue.running).toBe(false);
  });

  it('are not where nothing was taught, or on another day', async () => {
    expect((await handedIn({ 'both.wav': [DAY, both()], 'a.wav': [DAY, found(0)] })).asked).toEqual([]);
    expect((await handedIn({ 'both.wav': [DAY, both()], 'left.wav': [NEXT_DAY, left()] })).asked).toEqual([]);
  });

  it('stay as they are once somebody has opened them', async () => {
    const { asked, verdicts } = await handedIn(
      { 'both.wav': [DAY, both()], 'left.wav': [DAY + 9, left()] },
      async (name, teaching) => {
        if (name === 'left.wav') await teaching.open(teaching.lists.playings[0]!);
      },
    );
    expect(asked).toEqual([TAUGHT]);
    expect(verdicts).not.toContain('Surer.');
  });

  it('measured as another exercise, they are compared too', async () => {
    const { asked, teaching } = await handedIn({ 'left.wav': [DAY, left()], 'both.wav': [DAY + 9, both()] });
    await teaching.open(teaching.lists.playings[1]!);
    await teaching.hearing!.measureAs({ key: 'C major', form: 'scale', hands: 'together', octaves: 1 });
    expect(asked).toEqual([TAUGHT, TAUGHT]);
  });
});
