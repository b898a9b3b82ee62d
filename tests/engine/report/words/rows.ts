import type { ExerciseChoice } from '../../../../src/engine/exercise/index.ts';
import type { ReportOptions } from '../../../../src/engine/report/index.ts';
import type { Change, Playing } from './scenes.ts';
import { tell } from './scenes.ts';

// A major, right hand: A4 C♯2… fingers 1 2 3 1 2 3 5 up; the thumb goes under into step 3, 3 goes over into step 10.
const A: ExerciseChoice = { key: 'A major', form: 'arpeggio', hands: 'right', octaves: 2 };
// A♭ major, right hand: fingers 4 1 2 4 1 2 4 up; the thumb goes under into steps 1 and 4, 4 goes over into 9 and 12.
const A_FLAT: ExerciseChoice = { ...A, key: 'Ab major' };
const A_SCALE: ExerciseChoice = { ...A, form: 'scale', octaves: 1 };
const TRIADS: ExerciseChoice = { ...A, form: 'triads', octaves: 1 };
const PROGRESSION: ExerciseChoice = { ...A, form: 'progression', octaves: 1 };

/** One change at these steps. */
const at =
  (steps: readonly number[], change: Change) =>
  (step: number): Change =>
    steps.includes(step) ? change : {};
const wrong = (midi: number): Change => ({ wrong: { midi } });
const late = (lateMs: number): Change => ({ lateMs });

const fine = tell({ choice: A });
const wrongE = tell({ choice: A, change: at([2], wrong(66)) });
const lateThumb = tell({ choice: A, change: at([3], late(90)) });

/** A situation that is played, and what is said of it in English. */
export interface Row {
  readonly situation: string;
  readonly playing: Playing & { readonly as?: ExerciseChoice };
  readonly options?: Partial<ReportOptions>;
  readonly verdict: string;
  readonly nextStep: string;
}

const SLOPPY = [0, 80, -90, 120, -60, 30, 90, -110, 40, 70, -50, -90, 60];

export const ROWS: readonly Row[] = [
  {
    situation: 'too-little',
    playing: { choice: A, until: 1 },
    verdict: 'Too little was heard to judge: 2 of 13 notes.',
    nextStep: 'play it again with the device one to two metres from the piano.',
  },
  {
    situation: 'other-exercise',
    playing: { choice: { ...A, key: 'E major' }, as: A },
    verdict: 'This sounded like E major, not A major.',
    nextStep: 'switch to it if that is what you meant, or play the exercise chosen once more.',
  },
  {
    situation: 'other-exercise',
    playing: { choice: { ...A, key: 'A minor' }, as: A },
    verdict: 'This sounded like A minor, not A major: C natural for C♯ each time.',
    nextStep: 'switch to it if that is what you meant, or play the exercise chosen once more.',
  },
  {
    situation: 'other-exercise',
    playing: { choice: { ...A, hands: 'together' }, as: A },
    verdict: 'This sounded like both hands, not the right hand alone.',
    nextStep: 'switch to it if that is what you meant, or play the exercise chosen once more.',
  },
  {
    situation: 'stopped',
    playing: { choice: A, change: at([5], late(3000)) },
    verdict: 'You stopped after C♯ going up, for 3.4 s.',
    nextStep: 'right hand, C♯–E–A–C♯–E–A, slowly, at 48, straight through that place.',
  },
  {
    situation: 'broken-off',
    playing: { choice: A, until: 7 },
    verdict: 'It breaks off after E coming down.',
    nextStep: 'right hand, A–C♯–E–A–E–C♯–A, slowly, at 48, straight through that place.',
  },
  {
    situation: 'same-place-again',
    playing: { choice: A, change: at([2], wrong(66)) },
    options: { earlier: [wrongE] },
    verdict: 'Again at the same place: F♯ for E going up.',
    nextStep: 'only A–C♯–E–A, at half the tempo, 40, until it is right five times in a row.',
  },
  {
    situation: 'leading-note',
    playing: { choice: { ...PROGRESSION, key: 'D minor' }, change: at([3], wrong(60)) },
    verdict: 'C natural for C♯: the leading note is raised in the V7.',
    nextStep: 'play i–V7–i alone, saying "C♯" as you strike it.',
  },
  {
    situation: 'leading-note',
    playing: { choice: { ...A_SCALE, key: 'A minor' }, change: at([6], wrong(67)) },
    verdict: 'G natural for G♯: the leading note is raised.',
    nextStep: 'only E–F–G♯–A, saying "G♯" as you strike it.',
  },
  {
    situation: 'signature',
    playing: {
      choice: { ...A, key: 'Bb major', form: 'scale', octaves: 1 },
      change: at([3, 11], wrong(64)),
    },
    verdict: 'E natural for E♭ both times: the key has two flats.',
    nextStep: 'say the signature (B♭ and E♭), play the scale once slowly, then this again.',
  },
  {
    // One alone is a slip of the finger.
    situation: 'wrong-notes',
    playing: { choice: A, change: at([1], wrong(60)) },
    verdict: 'One note wrong: C natural for C♯ going up.',
    nextStep: 'right hand, only A–C♯–E, at 48, until it is right; then the whole.',
  },
  {
    situation: 'landed-off',
    playing: {
      choice: A_FLAT,
      change: (step) => (step === 4 ? wrong(71) : step === 5 ? wrong(74) : {}),
    },
    verdict: 'Two notes wrong, the hand landed one key off: B for C and D for E♭ going up.',
    nextStep: 'strike C–E♭–A♭ as one chord, lift, strike it again; then note by note, at 40.',
  },
  {
    situation: 'inner-note',
    playing: { choice: TRIADS, change: at([2], { missed: { note: 1 } }) },
    verdict: 'A (finger 3) does not sound in the second inversion going up.',
    nextStep: 'press the shape silently first, all keys touched; then strike them together.',
  },
  {
    situation: 'wrong-notes',
    playing: { choice: A, change: at([2], wrong(66)) },
    verdict: 'One note wrong: F♯ for E going up.',
    nextStep: 'right hand, only A–C♯–E–A, at 48, until it is right; then the whole.',
  },
  {
    situation: 'wrong-notes',
    playing: { choice: A, change: (step) => (step === 2 ? { missed: {} } : step === 9 ? wrong(67) : {}) },
    verdict: 'Two notes not right: E missing going up and G for A coming down.',
    nextStep: 'right hand, only A–C♯–E–A, at 48, until E sounds every time; then the whole.',
  },
  {
    situation: 'wrong-notes',
    playing: { choice: { ...A, hands: 'together' }, change: at([2], wrong(54)) },
    verdict: 'One note wrong: F♯ for E going up (left hand).',
    nextStep: 'both hands, only A–C♯–E–A, at 48, until it is right; then the whole.',
  },
  {
    situation: 'missed-notes',
    playing: { choice: A, change: at([2, 9], { missed: {} }) },
    verdict: 'Two notes missing: E going up and A coming down.',
    nextStep: 'right hand, only A–C♯–E–A, at 48, until E sounds every time; then the whole.',
  },
  {
    situation: 'slips',
    playing: { choice: A, change: at([2], { caught: 65 }) },
    verdict: 'F caught with E going up.',
    nextStep: 'right hand, only A–C♯–E–A–C♯, at 48, each finger over the middle of its key.',
  },
  {
    situation: 'repeats',
    playing: { choice: A, change: at([2], { twice: true }) },
    verdict: 'E is struck twice going up.',
    nextStep: 'only A–C♯–E–A–C♯, at 48; whatever happens, go on to the next note.',
  },
  {
    situation: 'crossing-late-one',
    playing: { choice: A, change: at([3], late(90)) },
    verdict: 'Every note right. The thumb comes late going up to A, by 90 ms; the rest is even.',
    nextStep: 'right hand, only C♯–E–A–C♯, at 53. Bring the thumb under while 3 still holds E.',
  },
  {
    situation: 'crossing-late-one-direction',
    playing: { choice: A_FLAT, change: at([1, 4], late(90)) },
    verdict: 'Every note right. The thumb comes late going up to C, both times; the rest is even.',
    nextStep: 'right hand, only A♭–C–E♭–A♭–C, at 53. Bring the thumb under while 4 still holds A♭.',
  },
  {
    situation: 'crossing-late-one-direction',
    playing: { choice: A_FLAT, change: at([9, 12], late(90)) },
    verdict: 'Every note right. Finger 4 crosses over late coming down to A♭, both times; the rest is even.',
    nextStep: 'right hand, only C–A♭–E♭–C–A♭, at 53. Bring 4 over while the thumb still holds C.',
  },
  {
    situation: 'crossing-late-both-ways',
    playing: { choice: A_FLAT, change: at([1, 4, 9, 12], late(90)) },
    verdict:
      'Every note right. The crossings come late both going up and coming down, by 90 ms; the rest is even.',
    nextStep: 'right hand, one direction at a time, at 53; then up and down.',
  },
  {
    situation: 'hands-apart-for-now',
    playing: { choice: { ...A, hands: 'together' }, change: (step) => late(0.9 * SLOPPY[step]!) },
    options: { earlier: [fine, tell({ choice: { ...A, hands: 'left' } })] },
    verdict:
      'Every note right. Hands apart for now: together the time varies by 19 %, each hand alone by 0 % at most.',
    nextStep: 'each hand alone until it is even; then together at 49.',
  },
  {
    situation: 'hands-apart-for-now',
    playing: { choice: { ...A, hands: 'together' }, change: at([3, 4, 9, 10], late(110)) },
    verdict: 'Every note right. Hands apart for now: the crossings come late both ways; the rest is even.',
    nextStep: 'each hand alone until it is even; then together at 53.',
  },
  {
    situation: 'hands-apart-for-now',
    playing: { choice: { ...A, hands: 'together' }, change: at([3, 4, 9], late(140)) },
    options: {
      earlier: (['left', 'right'] as const).map((hands) =>
        tell({ choice: { ...A, hands }, change: (step) => late(0.6 * SLOPPY[step]!) }),
      ),
    },
    verdict:
      'Every note right. Hands apart for now: together the crossings come 105 ms late, in each hand alone 10 ms at most; the rest is even.',
    nextStep: 'each hand alone until it is even; then together at 53.',
  },
  {
    situation: 'change-hesitates',
    playing: { choice: PROGRESSION, change: at([3], late(700)) },
    verdict: 'Every note right. The change to the V7 takes 1.9 times as long as the others.',
    nextStep: 'hold the chord, look at the next shape, then move as one, with no sound between.',
  },
  {
    situation: 'late-at-the-turn',
    playing: { choice: A, change: at([7], late(150)) },
    verdict: 'Every note right. The way down begins 150 ms late: the top note is held.',
    nextStep: 'think of the way down before you reach the top, and do not hold the top note.',
  },
  {
    situation: 'uneven-in-pairs',
    playing: { choice: A_SCALE, change: (step) => late(step % 2 === 0 ? -60 : 60) },
    verdict: 'Every note right. The notes limp in pairs, long–short.',
    nextStep: 'the other way round first, short–long, three times; then even.',
  },
  {
    situation: 'uneven',
    playing: { choice: A, change: (step) => late(SLOPPY[step]!) },
    verdict: 'Every note right. The whole is uneven: the time from note to note varies by 21 %.',
    nextStep: 'right hand, slower, at 55, with the pulse.',
  },
  {
    situation: 'one-hand-leads',
    playing: { choice: { ...TRIADS, hands: 'together' }, spreadMs: (note) => (note < 3 ? 0 : 45) },
    verdict: 'Every note right. The hands are not together: the left hand comes first, by 45 ms.',
    nextStep: 'play it again, listening to the right hand.',
  },
  {
    // A louder key arrives 20–30 ms earlier by itself: the rest is the hand's.
    situation: 'one-hand-leads',
    playing: {
      choice: { ...TRIADS, hands: 'together' },
      spreadMs: (note) => (note < 3 ? 0 : 75),
      noteDb: (note) => (note < 3 ? 6 : 0),
    },
    verdict: 'Every note right. The hands are not together: the left hand comes first, by 75 ms.',
    nextStep: 'play it again, listening to the right hand.',
  },
  {
    situation: 'hands-apart',
    playing: {
      choice: { ...TRIADS, hands: 'together' },
      handMs: (step, hand) => ((hand === 'left') === (step % 2 === 0) ? -25 : 25),
    },
    verdict: 'Every note right. The hands are not together, now one first, now the other.',
    nextStep: 'slower, at 53: stop on each beat, both hands together, then go on.',
  },
  {
    situation: 'chords-spread',
    playing: { choice: { ...TRIADS, hands: 'together' }, spreadMs: (note) => (note === 0 ? 70 : 0) },
    verdict:
      'Every note right. The chords are not struck as one: 70 ms from first note to last, finger 5 of the left hand last.',
    nextStep: "touch all the keys before you press, and put the arm's weight into finger 5 of the left hand.",
  },
  {
    situation: 'chords-spread',
    playing: { choice: TRIADS, spreadMs: (note) => 35 * note },
    verdict:
      'Every note right. The chords are not struck as one: 70 ms from first note to last, finger 5 last.',
    nextStep: "touch all the keys before you press, and put the arm's weight into finger 5.",
  },
  {
    situation: 'drift',
    playing: { choice: A, change: (step) => late(9 * step) },
    verdict: 'Every note right. It drags, from 78 to 62.',
    nextStep: 'with the pulse, 10 % slower, at 62.',
  },
  {
    situation: 'drift',
    playing: { choice: A, change: (step) => late(-6 * step) },
    verdict: 'Every note right. It rushes, from 81 to 99.',
    nextStep: 'with the pulse, 10 % slower, at 80.',
  },
  {
    situation: 'under-tempo',
    playing: { choice: A },
    options: { targetBpm: 100 },
    verdict: 'Every note right. Even, at 80; the aim is 100.',
    nextStep: 'the same at 85.',
  },
  {
    situation: 'better',
    playing: { choice: A },
    options: { earlier: [lateThumb] },
    verdict: 'Every note right. The crossing is in time now, where it was 90 ms late.',
    nextStep: 'the same again, to make it stay.',
  },
  {
    situation: 'better',
    playing: { choice: A },
    options: { earlier: [wrongE] },
    verdict: 'Every note right now, where one was not last time.',
    nextStep: 'the same again, to make it stay.',
  },
  {
    situation: 'at-the-criterion',
    playing: { choice: A },
    verdict: 'Every note right, and even.',
    nextStep: 'the same again; three in a row make it ready.',
  },
  {
    situation: 'twice-at-the-criterion',
    playing: { choice: A },
    options: { earlier: [fine] },
    verdict: 'Every note right, and even, twice in a row. Once more like that.',
    nextStep: 'the same again.',
  },
  {
    situation: 'ready',
    playing: { choice: A },
    options: { earlier: [fine, fine] },
    verdict: 'Three in a row, every note right and even: the right hand is ready.',
    nextStep: 'the left hand alone, in the same way; then hands together.',
  },
  {
    situation: 'ready',
    playing: { choice: A },
    options: {
      earlier: [...[1, 2, 3].map(() => tell({ choice: { ...A, hands: 'left' } })), fine, fine],
    },
    verdict: 'Three in a row, every note right and even: the right hand is ready.',
    nextStep: 'hands together, at 53; the left hand is ready too.',
  },
  {
    situation: 'ready',
    playing: { choice: { ...A, hands: 'together' } },
    options: { earlier: [1, 2].map(() => tell({ choice: { ...A, hands: 'together' } })) },
    verdict: 'A major stands at 80: three in a row, every note right and even.',
    nextStep: '6 to 8 beats faster, or the next key round the circle, E major.',
  },
];
