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
  'kinds',
  'one-of-two',
];

/** Wrong notes that are hard to tell for what they are, each kind in turn. */
const WRONG_KINDS = ['an octave lower', 'beside a covered key', 'the written one rings on'] as const;

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
  const wrongKind = WRONG_KINDS[index % WRONG_KINDS.length]!;
  const hardship = set === 'conditions' ? names[index % names.length]! : set === 'kinds' ? wrongKind : '';
  const kind = set === 'conditions' ? Math.floor(index / names.length) % 3 : null;
  const chords =
    set === 'one-hand' ||
    kind === 0 ||
    kind === 1 ||
    ((set === 'both-hands' || set === 'kinds') && random.chance(0.6));
  const oneHand = set === 'one-hand' || kind === 0;
  const form = random.pick(chords ? CHORDS : SINGLE);
  const octaves = form === 'arpeggio' || form === 'scale' ? 1 + random.integer(2) : 1;
  const hands = oneHand ? random.pick(['left', 'right'] as const) : 'together';
  const exercise: ExerciseChoice = { key: random.pick(ALL_KEYS), form, hands, octaves };
  const isOneOfTwo = set === 'one-of-two';
  const written = buildExercise(exercise);
  const { steps } = written;
  const notesPerSec = chords ? random.uniform(0.6, 2) : 1.5 * (7 / 1.5) ** random.uniform(0, 1);
  const stepsPerBeat = (steps.length - 1) / (steps.at(-1)!.beat - steps[0]!.beat);
  const student = studentOf(notesPerSec, steps.length, stepsPerBeat, shiftsOf(steps), hardship, random);
  const played = (): Partial<StudentKnobs> => {
    // An octave higher it would be the upper hand as written.
    if (isOneOfTwo) return { mistakes: NO_MISTAKES, octaveShift: 0 };
    if (set === 'kinds') return { mistakes: wrongNotes(written, wrongKind, random) };
    return set === 'octave-pairs' ? unequalHands(written, random) : faulty(written, random);
  };
  return {
    set,
    notesPerSec,
    hardship,
    spec: {
      seed: random.integer(2 ** 31),
      piano,
      exercise: isOneOfTwo ? { ...exercise, hands: 'left' } : exercise,
      student: { ...student, ...played() },
      home: { ...homeOf(random), ...CONDITIONS[hardship] },
    },
    ...(isOneOfTwo && { asked: exercise }),
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

/** Up to four wrong notes of one kind, two steps apart at least, the first and the last step spared. */
function wrongNotes(
  { steps }: Exercise,
  kind: (typeof WRONG_KINDS)[number],
  random: Random,
): readonly Mistake[] {
  const mistakes: Mistake[] = [];
  for (const { step, notes } of steps.slice(1, -1)) {
    if (mistakes.length === 4 || mistakes.at(-1)?.step === step - 1 || !random.chance(0.35)) continue;
    const about = [-1, 0, 1].flatMap((offset) => steps[step + offset]!.notes.map(({ midi }) => midi));
    const isMeant = {
      'an octave lower': () => true,
      'beside a covered key': (hand: Hand, midi: number) =>
        notes.some((other) => other.hand !== hand && other.midi === midi - 12),
      'the written one rings on': (hand: Hand, midi: number) =>
        steps[step - 1]!.notes.some((other) => other.hand === hand && other.midi === midi),
    }[kind];
    const free = notes.flatMap(({ hand, midi }, note) =>
      isMeant(hand, midi)
        ? (kind === 'an octave lower' ? [-12] : [-2, -1, 1, 2])
            .map((by) => ({ kind: 'wrong' as const, step, note, midi: midi + by }))
            .filter((one) => !about.includes(one.midi))
        : [],
    );
    if (free.length > 0) mistakes.push(random.pick(free));
  }
  return mistakes;
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
