import { ALL_KEYS, buildExercise } from '../../src/engine/exercise/index.ts';
import type { Exercise, ExerciseChoice, Form, Hand } from '../../src/engine/exercise/index.ts';
import { createRandom } from '../support/random.ts';
import type { Random } from '../support/random.ts';
import { NO_MISTAKES } from '../support/render.ts';
import type { HomeKnobs, PianoName, StudentKnobs } from '../support/render.ts';
import type { Mistake } from '../support/student/mistakes.ts';
import { DB_PER_VELOCITY } from '../support/student/perform.ts';
import { homeOf, shiftsOf, studentOf } from './attempts.ts';
import type { Attempt, ChordSet } from './attempts.ts';
import { CODECS } from './codec.ts';

export const CHORD_SETS: readonly ChordSet[] = [
  'one-hand',
  'both-hands',
  'octave-pairs',
  'conditions',
  'aims',
];

/** Each hard condition by itself, the rest of the home as in the standard set; the codecs are applied to the sound. */
export const CONDITIONS: Readonly<Record<string, Partial<HomeKnobs>>> = {
  'noise 15 dB below': { noises: [{ kind: 'pink', belowDb: 15 }] },
  'speech 12 dB below': { noises: [{ kind: 'speech', belowDb: 12 }] },
  'hum 15 dB below': { noises: [{ kind: 'hum', belowDb: 15 }] },
  'click 15 dB below': { noises: [{ kind: 'metronome', belowDb: 15 }] },
  'level control': { levelControl: true },
  'tuning −90 cents': { tuningCents: -90 },
  'tuning −50 cents': { tuningCents: -50 },
  'tuning +40 cents': { tuningCents: 40 },
  'room of 1.2 s': { room: { decaySec: 1.2, directDb: 0 } },
  'clipping by 6 dB': { clipDb: 6 },
  'peaks at −38 dB': { peakDb: -38 },
  'pedal held': {},
  ...Object.fromEntries(Object.keys(CODECS).map((codec) => [codec, {}])),
};

const CHORDS: readonly Form[] = ['triads', 'progression'];
const SINGLE: readonly Form[] = ['arpeggio', 'scale', 'broken-triads'];
/** Share of the steps with a wrong or a missed note or a slip, where there are mistakes at all: far more than a student makes,
 *  so that a hundred attempts have a hundred of them. */
const FAULTY = { 'one hand in chords': 0.25, 'both hands in chords': 0.4, 'single notes': 0.1 } as const;
/** As tests/support/student draws them: mostly a semitone or a whole tone away. */
const WRONG_BY = [-1, 1, -1, 1, -1, 1, -2, 2, -2, 2, -3, 3];

/** The set, the piano and a number → one attempt, always the same. Conditions come in turn, each with chords of one hand, chords of both, and single notes of both. */
export function chordAttemptOf(set: Exclude<ChordSet, 'aims'>, piano: PianoName, index: number): Attempt {
  const random = createRandom(
    900_007 * index + 7919 * (CHORD_SETS.indexOf(set) + 11) + (piano === 'dev' ? 1 : 2),
  );
  const names = Object.keys(CONDITIONS);
  const hardship = set === 'conditions' ? names[index % names.length]! : '';
  const kind = set === 'conditions' ? Math.floor(index / names.length) % 3 : null;
  const chords =
    set === 'one-hand' || kind === 0 || kind === 1 || (set === 'both-hands' && random.chance(0.6));
  const oneHand = set === 'one-hand' || kind === 0;
  const form = random.pick(chords ? CHORDS : SINGLE);
  const octaves = form === 'arpeggio' || form === 'scale' ? 1 + random.integer(2) : 1;
  const hands = oneHand ? random.pick(['left', 'right'] as const) : 'together';
  const exercise: ExerciseChoice = { key: random.pick(ALL_KEYS), form, hands, octaves };
  const written = buildExercise(exercise);
  const { steps } = written;
  const notesPerSec = chords ? random.uniform(0.6, 2) : 1.5 * (7 / 1.5) ** random.uniform(0, 1);
  const stepsPerBeat = (steps.length - 1) / (steps.at(-1)!.beat - steps[0]!.beat);
  const student = studentOf(notesPerSec, steps.length, stepsPerBeat, shiftsOf(steps), hardship, random);
  return {
    set,
    notesPerSec,
    hardship,
    spec: {
      seed: random.integer(2 ** 31),
      piano,
      exercise,
      student: {
        ...student,
        ...(set === 'octave-pairs' ? unequalHands(written, random) : faulty(written, random)),
      },
      home: { ...homeOf(random), ...CONDITIONS[hardship] },
    },
  };
}

/** Two attempts in three with faults in many places: a note wrong, missed, or its neighbour caught with it. */
function faulty(written: Exercise, random: Random): Partial<StudentKnobs> {
  if (random.chance(1 / 3)) return { mistakes: NO_MISTAKES };
  const { form, hands } = written.choice;
  const inChords = hands === 'together' ? 'both hands in chords' : 'one hand in chords';
  const share = FAULTY[CHORDS.includes(form) ? inChords : 'single notes'];
  const mistakes = written.steps.flatMap(({ step, notes }): readonly Mistake[] => {
    if (!random.chance(share)) return [];
    const note = random.integer(notes.length);
    const kind = random.pick(['wrong', 'wrong', 'missed', 'missed', 'slip'] as const);
    if (kind === 'missed') return [{ kind, step, note }];
    const midi = strangeKey(written, step, note, random);
    return midi === null ? [] : [{ kind, step, note, midi }];
  });
  return { mistakes };
}

/** A key near a note's own that neither its step nor a neighbouring one asks for. */
function strangeKey({ steps }: Exercise, step: number, note: number, random: Random): number | null {
  const near = [-1, 0, 1].flatMap((offset) => steps[step + offset]?.notes.map(({ midi }) => midi) ?? []);
  const { midi } = steps[step]!.notes[note]!;
  const free = WRONG_BY.filter((semitones) => !near.includes(midi + semitones));
  return free.length === 0 ? null : midi + random.pick(free);
}

/** One hand louder by −12 … +12 dB, and one hand, mostly the upper, that leaves out its note in 5 to 20 steps of a hundred. */
function unequalHands({ steps }: Exercise, random: Random): Partial<StudentKnobs> {
  const leftHandDb = random.uniform(-12, 12);
  const hand: Hand = random.chance(0.7) ? 'right' : 'left';
  const share = random.uniform(0.05, 0.2);
  const mistakes = steps.flatMap(({ step, notes }): readonly Mistake[] =>
    random.chance(share)
      ? [{ kind: 'missed', step, note: notes.findIndex((note) => note.hand === hand) }]
      : [],
  );
  // The blow of the right hand makes up for the left, so that neither meets the end of the scale of blows.
  const velocity = random.uniform(62, 78) - leftHandDb / 2 / DB_PER_VELOCITY;
  return { leftHandDb, velocity, loudnessJitterDb: random.uniform(0.5, 2), endsDb: 0, thumbDb: 0, mistakes };
}
