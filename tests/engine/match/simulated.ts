import type { Exercise, ExerciseChoice } from '../../../src/engine/exercise/index.ts';
import { buildExercise } from '../../../src/engine/exercise/index.ts';
import type { Heard, PlayedNote } from '../../../src/engine/listen/index.ts';
import type { Random } from '../../support/random.ts';
import { createRandom } from '../../support/random.ts';
import type { StudentKnobs } from '../../support/student/knobs.ts';
import { STUDENT_DEFAULTS } from '../../support/student/knobs.ts';
import { DB_PER_VELOCITY, perform } from '../../support/student/perform.ts';
import type { Performance } from '../../support/student/types.ts';

/** How well a listener hears: the errors of its own that it adds to what was played. */
export interface ListenerKnobs {
  readonly onsetSdMs: number;
  /** share of struck notes that it does not hear */
  readonly deafTo: number;
  /** notes that nobody struck, a struck note: on a partial of a real one or anywhere, of low confidence */
  readonly ghosts: number;
  readonly tuningCents: number;
  /** semitones by which it reads every key */
  readonly readsOff: number;
  readonly hearsReleases: boolean;
}

export const PERFECT_LISTENER: ListenerKnobs = {
  onsetSdMs: 0,
  deafTo: 0,
  ghosts: 0,
  tuningCents: 0,
  readsOff: 0,
  hearsReleases: true,
};

/** As good as a good blind listener: 2 ms, one note in 200 lost, one ghost in 50. */
export const GOOD_LISTENER: ListenerKnobs = {
  ...PERFECT_LISTENER,
  onsetSdMs: 2,
  deafTo: 0.005,
  ghosts: 0.02,
};

/** Notes → what a listener would hand on. */
export function heardOf(notes: readonly PlayedNote[], over: Partial<Heard> = {}): Heard {
  const inTime = [...notes].sort((a, b) => a.timeSec - b.timeSec || a.midi - b.midi);
  const first = inTime[0]?.timeSec ?? 0;
  const last = inTime.at(-1)?.timeSec ?? 0;
  return {
    notes: inTime,
    tuning: { cents: 0, a4Hz: 440, sdCents: 1, strays: [] },
    findings: [],
    passages: [{ startSec: first, endSec: last + 0.5 }],
    durationSec: last + 2,
    sampleRateHz: 44100,
    onsetSdMs: 0,
    ...over,
  };
}

export function played(timeSec: number, midi: number, over: Partial<PlayedNote> = {}): PlayedNote {
  return { timeSec, midi, cents: 0, levelDb: -20, confidence: 0.95, releaseSec: timeSec + 0.3, ...over };
}

/** A performance → what a listener of those knobs hears of it. `heard.notes[i]` came from `strokes[from[i]]`. */
export function overhear(
  performance: Performance,
  listener: Partial<ListenerKnobs> = {},
  random: Random = createRandom(1),
): Heard {
  const knobs = { ...PERFECT_LISTENER, ...listener };
  const notes: PlayedNote[] = [];
  for (const stroke of performance.strokes) {
    if (random.chance(knobs.deafTo)) continue;
    const timeSec = stroke.timeSec + random.normal(knobs.onsetSdMs) / 1000;
    const levelDb = -20 + (stroke.velocity - 70) * DB_PER_VELOCITY;
    const midi = stroke.midi + knobs.readsOff;
    const releaseSec = knobs.hearsReleases ? stroke.releaseSec : null;
    notes.push(played(timeSec, midi, { levelDb, releaseSec, confidence: random.uniform(0.75, 1) }));
    if (random.chance(knobs.ghosts)) {
      const off = random.chance(0.7) ? random.pick([12, 19, 24]) : random.integer(24) - 12;
      const confidence = random.uniform(0.1, 0.5);
      notes.push(played(timeSec + random.normal(0.01), midi + off, { levelDb: levelDb - 15, confidence }));
    }
  }
  return heardOf(notes, {
    tuning: {
      cents: knobs.tuningCents,
      a4Hz: 440 * 2 ** (knobs.tuningCents / 1200),
      sdCents: 1,
      strays: [],
    },
    durationSec: performance.durationSec,
    onsetSdMs: knobs.onsetSdMs,
  });
}

/** A choice, how the student plays it and how it is heard → all that a test needs. */
export function attempt(
  choice: Partial<ExerciseChoice>,
  student: Partial<StudentKnobs> = {},
  listener: Partial<ListenerKnobs> = {},
  seed = 1,
): { exercise: Exercise; performance: Performance; heard: Heard } {
  const exercise = buildExercise({ key: 'C major', form: 'arpeggio', hands: 'right', octaves: 1, ...choice });
  const random = createRandom(seed);
  const performance = perform(exercise, { ...STUDENT_DEFAULTS, ...student }, random.fork('student'));
  return { exercise, performance, heard: overhear(performance, listener, random.fork('listener')) };
}
