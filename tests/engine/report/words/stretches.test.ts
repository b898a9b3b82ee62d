import { describe, expect, it } from 'vitest';
import type { ExerciseChoice } from '../../../../src/engine/exercise/index.ts';
import type { ReportOptions } from '../../../../src/engine/report/index.ts';
import type { Change, Playing } from './scenes.ts';
import { tell } from './scenes.ts';

// What is to be practised of each trouble: from which step to which, and how fast. Each lies where nothing cuts the stretch short.

// From A3, thumb under into 3, 7, 10; the top is step 14.
const SCALE: ExerciseChoice = { key: 'A major', form: 'scale', hands: 'right', octaves: 2 };
const OCTAVE: ExerciseChoice = { ...SCALE, octaves: 1 };
const MELODIC: ExerciseChoice = { ...OCTAVE, key: 'A minor', minorScale: 'melodic' };
const TRIADS: ExerciseChoice = { ...OCTAVE, form: 'triads' };
const CADENCE: ExerciseChoice = { ...TRIADS, key: 'D minor', form: 'progression' };

const at =
  (change: Change, ...steps: readonly number[]) =>
  (step: number): Change =>
    steps.includes(step) ? change : {};
const wrong = (midi: number): Change => ({ wrong: { midi } });
const late = (lateMs: number): Change => ({ lateMs });

const WRONG_G: Playing = { choice: SCALE, change: at(wrong(67), 6) };
const ROWS: readonly {
  readonly of: string;
  readonly playing: Playing;
  readonly options?: Partial<ReportOptions>;
  readonly practice: readonly [fromStep: number, toStep: number, tempoBpm: number];
}[] = [
  { of: 'wrong-notes', playing: WRONG_G, practice: [4, 7, 72] },
  { of: 'missed-notes', playing: { choice: SCALE, change: at({ missed: {} }, 6) }, practice: [4, 7, 72] },
  {
    of: 'same-place-again',
    playing: WRONG_G,
    options: { earlier: [tell(WRONG_G)] },
    practice: [4, 7, 60],
  },
  { of: 'leading-note', playing: { choice: MELODIC, change: at(wrong(67), 6) }, practice: [4, 7, 60] },
  { of: 'leading-note', playing: { choice: CADENCE, change: at(wrong(60), 3) }, practice: [2, 4, 60] },
  {
    of: 'signature',
    playing: { choice: { ...OCTAVE, key: 'D major' }, change: at(wrong(72), 6, 8) },
    practice: [4, 8, 72],
  },
  {
    of: 'landed-off',
    playing: { choice: SCALE, change: (step) => (step === 7 ? wrong(70) : step === 8 ? wrong(72) : {}) },
    practice: [7, 9, 60],
  },
  {
    of: 'inner-note',
    playing: { choice: TRIADS, change: at({ missed: { note: 1 } }, 3) },
    practice: [2, 4, 72],
  },
  { of: 'slips', playing: { choice: SCALE, change: at({ caught: 67 }, 6) }, practice: [4, 8, 72] },
  { of: 'repeats', playing: { choice: SCALE, change: at({ twice: true }, 6) }, practice: [4, 8, 72] },
  { of: 'crossing-late', playing: { choice: SCALE, change: at(late(90), 7) }, practice: [5, 8, 80] },
  { of: 'late-note', playing: { choice: SCALE, change: at(late(100), 6) }, practice: [4, 7, 90] },
  { of: 'late-at-the-turn', playing: { choice: SCALE, change: at(late(150), 15) }, practice: [11, 17, 96] },
  // From the last crossing two steps before it or more, to two steps after it.
  { of: 'stopped', playing: { choice: SCALE, change: at(late(3000), 9) }, practice: [3, 10, 72] },
  { of: 'stopped', playing: { choice: SCALE, change: at(late(3000), 10) }, practice: [7, 11, 72] },
  { of: 'stopped', playing: { choice: SCALE, change: at(late(3000), 11) }, practice: [7, 12, 72] },
  { of: 'stopped', playing: { choice: TRIADS, change: at(late(6000), 4) }, practice: [2, 5, 72] },
  { of: 'change-hesitates', playing: { choice: TRIADS, change: at(late(900), 3) }, practice: [2, 3, 90] },
  {
    of: 'chords-spread',
    playing: { choice: TRIADS, spreadMs: (note, _, step) => (step === 3 ? 50 : 35) * note },
    practice: [2, 4, 90],
  },
  {
    of: 'inner-notes-soft',
    playing: { choice: TRIADS, noteDb: (note) => (note === 1 ? -14 : 0) },
    practice: [0, 2, 90],
  },
];

describe('what is to be practised', () => {
  it.each(ROWS)('of $of', ({ of, playing, options, practice: [fromStep, toStep, tempoBpm] }) => {
    const { words } = tell({ bpm: 120, ...playing }, options);
    expect(words).toMatchObject({ situation: of, practice: { fromStep, toStep, tempoBpm } });
  });

  // Slower than 40 a pulse is hard to keep.
  it.each([
    [80, 48],
    [60, 40],
    [30, 30],
  ])('is not slower than ♩ = 40, or than it was played: of ♩ = %i at %i', (bpm, tempoBpm) => {
    expect(tell({ ...WRONG_G, bpm }).words.practice).toMatchObject({ tempoBpm });
  });

  it.each([
    ['at the beginning', 0, 58, [0, 3]],
    ['beside it', 1, 60, [0, 3]],
    ['at the end', 14, 58, [11, 14]],
  ])('has four notes %s too', (_, step, midi, [fromStep, toStep]) => {
    const { practice } = tell({ choice: OCTAVE, change: at(wrong(midi), step) }).words;
    expect(practice).toMatchObject({ fromStep, toStep });
  });
});
