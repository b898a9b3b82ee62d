import { describe, expect, it } from 'vitest';
import { assess } from '../../../../src/engine/index.ts';
import type { ExerciseChoice } from '../../../../src/engine/index.ts';
import { matchNotes } from '../../../../src/engine/match/index.ts';
import { writeReport } from '../../../../src/engine/report/index.ts';
import { render } from '../../../support/render.ts';
import type { HomeKnobs, StudentKnobs } from '../../../support/render.ts';
import { createRandom } from '../../../support/random.ts';
import { attempt } from '../../match/simulated.ts';

/*
 * Attempts without a fault: no sentence may find one. Rendered on the piano that nothing was trained or tuned on; and, since no
 * second such piano is in the registries, played note lists with the error that the ear was measured to have (onsets 2 ms).
 */

const A: ExerciseChoice = { key: 'A major', form: 'scale', hands: 'right', octaves: 2 };

/** What may be said of an attempt without a fault. */
const INNOCENT = ['at-the-criterion', 'nothing-to-remark', 'nearly-even'];

interface Player {
  readonly name: string;
  readonly exercise: ExerciseChoice;
  readonly student: Partial<StudentKnobs>;
  readonly home?: Partial<HomeKnobs>;
}

const BOTH: ExerciseChoice = { ...A, hands: 'together', octaves: 1 };

/** Played well, each in its own way. */
const PLAYERS: readonly Player[] = [
  { name: 'legato, every key held 20 ms into the next', exercise: A, student: { overlapMs: 20 } },
  {
    name: 'legato in the left hand',
    exercise: { ...A, hands: 'left', key: 'E major' },
    student: { overlapMs: 60 },
  },
  { name: 'detached throughout', exercise: { ...A, form: 'arpeggio' }, student: { overlapMs: -84 } },
  {
    name: 'the pedal held in a ringing room',
    exercise: { ...A, octaves: 1 },
    student: { pedal: 'held' },
    home: { room: { decaySec: 0.6, directDb: 3 } },
  },
  { name: 'loudness of chance', exercise: { ...A, key: 'Ab major' }, student: { loudnessJitterDb: 3 } },
  {
    name: 'a swell: the ends softer',
    exercise: { ...A, form: 'arpeggio', key: 'D major' },
    student: { endsDb: -6 },
  },
  {
    name: 'chords with soft inner notes',
    exercise: { ...A, form: 'triads', octaves: 1 },
    student: { innerDb: -4 },
  },
  {
    name: 'chords of a progression',
    exercise: { ...A, form: 'progression', key: 'F major', octaves: 1 },
    student: {},
  },
  { name: 'both hands', exercise: BOTH, student: {} },
  {
    name: 'both hands, the left one softer',
    exercise: { ...BOTH, form: 'arpeggio' },
    student: { leftHandDb: -3 },
  },
];

describe('an attempt without a fault is accused of none', () => {
  it.each(PLAYERS)('rendered: $name', async ({ exercise, student, home = {} }) => {
    const { channels, sampleRateHz } = await render({
      seed: 5,
      piano: 'test',
      exercise,
      student: { jitterMs: 8, ...student },
      home,
    });
    const assessment = assess({ channels, sampleRateHz }, exercise);
    expect(assessment.kind).toBe('report');
    const words = assessment.kind === 'report' ? assessment.report.words : null;
    expect(INNOCENT, words?.verdict).toContain(words?.situation);
  });

  it.each(PLAYERS)('as a note list, many times: $name', ({ name, exercise, student }) => {
    const accused = Array.from({ length: 40 }, (_unused, seed) => {
      const { heard, exercise: built } = attempt(
        exercise,
        { jitterMs: 8, ...student },
        { onsetSdMs: 2, hearsReleases: createRandom(seed).chance(0.5) },
        1000 * name.length + seed,
      );
      return writeReport(heard, matchNotes(heard, built)).words;
    }).filter(({ situation }) => !INNOCENT.includes(situation));
    expect(accused.map(({ verdict }) => verdict)).toEqual([]);
  });
});
