import type { ExerciseChoice, Locale } from '../../../../src/engine/exercise/index.ts';
import type { Report, ReportOptions } from '../../../../src/engine/report/index.ts';
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
  /** what it speaks of, and marks on the string; left out: no step */
  readonly steps?: readonly number[];
  readonly nextStep: string;
}

const LOCALES = {
  en: { language: 'en', naming: 'letters' },
  de: { language: 'de', naming: 'german' },
} as const satisfies Record<Locale['language'], Locale>;
const REPORTS = { en: new Map<Row, Report>(), de: new Map<Row, Report>() };

/** The report of a row; written once, since many tests read it. */
export function told(row: Row, language: Locale['language'] = 'en'): Report {
  const known = REPORTS[language].get(row);
  const report = known ?? tell(row.playing, { ...row.options, locale: LOCALES[language] });
  REPORTS[language].set(row, report);
  return report;
}

const SLOPPY = [0, 80, -90, 120, -60, 30, 90, -110, 40, 70, -50, -90, 60];
const sloppy =
  (share: number) =>
  (step: number): Change => ({ lateMs: share * SLOPPY[step]! });

export const ROWS: readonly Row[] = [
  {
    situation: 'too-little',
    playing: { choice: A, until: 1 },
    verdict: 'Too little was heard to judge: 2 of 13 notes.',
    nextStep: 'play it again with the device one to two metres from the piano.',
  },
  {
    // Late, with a note missing and one struck twice: of all that nothing is said.
    situation: 'sound-lost',
    playing: {
      choice: A,
      change: (step) =>
        step === 2 ? { lateMs: 400 } : step === 4 ? { missed: {} } : step === 7 ? { twice: true } : {},
    },
    options: { soundLostSec: 0.42 },
    verdict: '0.4 s of sound were lost: time and missing notes are not judged.',
    nextStep: 'the same once more, from the beginning.',
  },
  {
    situation: 'sound-lost',
    playing: { choice: A, change: at([2], wrong(66)) },
    options: { soundLostSec: 1.3 },
    verdict: '1.3 s of sound were lost: time and missing notes are not judged; F♯ instead of E going up.',
    steps: [2],
    nextStep: 'the same once more, from the beginning.',
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
    verdict: 'This sounded like A minor, not A major: C natural instead of C♯ each time.',
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
    verdict: 'Every note right. You stopped after C♯ going up, for 3.4 s.',
    steps: [4],
    nextStep:
      'only C♯–E–A–C♯–E–A, ♩ = 48, two notes a beat, straight through that place, three times in a row without a stop; then the whole.',
  },
  {
    situation: 'broken-off',
    playing: { choice: A, until: 7 },
    verdict: 'Every note so far right. It breaks off after E coming down.',
    steps: [7],
    nextStep:
      'only A–C♯–E–A–E–C♯–A, ♩ = 48, two notes a beat, straight through that place, three times in a row without a stop; then the whole.',
  },
  {
    situation: 'same-place-again',
    playing: { choice: A, change: at([2], wrong(66)) },
    options: { earlier: [wrongE] },
    verdict: '12 of 13 notes right. Again at the same place: F♯ instead of E going up.',
    steps: [2],
    nextStep: 'only A–C♯–E–A, ♩ = 40, two notes a beat, until right five times in a row; then the whole.',
  },
  {
    situation: 'leading-note',
    playing: { choice: { ...PROGRESSION, key: 'D minor' }, change: at([3], wrong(60)) },
    verdict: '14 of 15 notes right. C natural instead of C♯: the leading note is raised in the V7.',
    steps: [3],
    nextStep:
      'only i–V7–i, ♩ = 40, one chord a beat, saying "C♯" as you strike it, until right three times in a row.',
  },
  {
    situation: 'other-exercise',
    playing: {
      choice: { ...A_SCALE, key: 'A minor', minorScale: 'natural' },
      as: { ...A_SCALE, key: 'A minor' },
    },
    verdict: 'This sounded like the natural minor scale, not the harmonic one.',
    nextStep: 'switch to it if that is what you meant, or play the exercise chosen once more.',
  },
  {
    situation: 'signature',
    playing: {
      choice: { ...A, key: 'Bb major', form: 'scale', octaves: 1 },
      change: at([3, 11], wrong(64)),
    },
    verdict: '13 of 15 notes right. E natural instead of E♭ both times: the key has two flats.',
    steps: [3, 11],
    nextStep:
      'say the signature (B♭ and E♭); then only C–D–E♭–F–G, ♩ = 48, two notes a beat, until E♭ is right three times in a row; then the whole.',
  },
  {
    situation: 'signature',
    playing: {
      choice: { ...A, key: 'C major', form: 'scale', octaves: 1 },
      change: at([6, 8], wrong(70)),
    },
    verdict: '13 of 15 notes right. B♭ instead of B both times: the key has no sharps or flats.',
    steps: [6, 8],
    nextStep:
      'say the signature (no sharps or flats); then only G–A–B–C–B, ♩ = 48, two notes a beat, until B is right three times in a row; then the whole.',
  },
  {
    // One alone is a slip of the finger.
    situation: 'wrong-notes',
    playing: { choice: A, change: at([1], wrong(60)) },
    verdict: '12 of 13 notes right. One wrong: C natural instead of C♯ going up.',
    steps: [1],
    nextStep: 'only A–C♯–E–A, ♩ = 48, two notes a beat, until right three times in a row; then the whole.',
  },
  {
    situation: 'landed-off',
    playing: {
      choice: A_FLAT,
      change: (step) => (step === 4 ? wrong(71) : step === 5 ? wrong(74) : {}),
    },
    verdict:
      '11 of 13 notes right. Two wrong, the hand landed one key off: B instead of C and D instead of E♭ going up.',
    steps: [4, 5],
    nextStep:
      'strike C–E♭–A♭ as one chord, lift, strike it again, three times; then note by note, ♩ = 40, two notes a beat, until right three times in a row.',
  },
  {
    situation: 'inner-note',
    playing: { choice: TRIADS, change: at([2], { missed: { note: 1 } }) },
    verdict: '20 of 21 notes right. The inner note A does not sound in the second inversion going up.',
    steps: [2],
    nextStep:
      'only from the first inversion up to the top root position, ♩ = 48, one chord a beat, each pressed silently first, until every note sounds three times in a row.',
  },
  {
    situation: 'wrong-notes',
    playing: { choice: A, change: at([2], wrong(66)) },
    verdict: '12 of 13 notes right. One wrong: F♯ instead of E going up.',
    steps: [2],
    nextStep: 'only A–C♯–E–A, ♩ = 48, two notes a beat, until right three times in a row; then the whole.',
  },
  {
    situation: 'wrong-notes',
    playing: { choice: A, change: (step) => (step === 2 ? { missed: {} } : step === 9 ? wrong(67) : {}) },
    verdict: '11 of 13 notes right. Two not right: E missing going up and G instead of A coming down.',
    steps: [2, 9],
    nextStep: 'only A–C♯–E–A, ♩ = 48, two notes a beat, until E sounds three times in a row; then the whole.',
  },
  {
    situation: 'wrong-notes',
    playing: { choice: { ...A, hands: 'together' }, change: at([2], wrong(54)) },
    verdict: '25 of 26 notes right. One wrong: F♯ instead of E going up (left hand).',
    steps: [2],
    nextStep:
      'left hand alone, only A–C♯–E–A, ♩ = 48, two notes a beat, until right three times in a row; then the whole.',
  },
  {
    situation: 'missed-notes',
    playing: { choice: A, change: at([2, 9], { missed: {} }) },
    verdict: '11 of 13 notes right. Two missing: E going up and A coming down.',
    steps: [2, 9],
    nextStep: 'only A–C♯–E–A, ♩ = 48, two notes a beat, until E sounds three times in a row; then the whole.',
  },
  {
    situation: 'slips',
    playing: { choice: A, change: at([2], { caught: 65 }) },
    verdict: 'All 13 notes right. F caught with E going up.',
    steps: [2],
    nextStep:
      'only A–C♯–E–A–C♯, ♩ = 48, two notes a beat, each finger over the middle of its key, until right three times in a row; then the whole.',
  },
  {
    situation: 'repeats',
    playing: { choice: A, change: at([2], { twice: true }) },
    verdict: 'All 13 notes right. E is struck twice going up.',
    steps: [2],
    nextStep:
      'only A–C♯–E–A–C♯, ♩ = 48, two notes a beat; whatever happens, go on to the next note, three times in a row.',
  },
  {
    situation: 'crossing-late',
    playing: { choice: A, change: at([3], late(90)) },
    verdict: 'Every note right. The crossing comes late going up to A, by 90 ms; the rest is even.',
    steps: [3],
    nextStep:
      'only C♯–E–A–C♯, ♩ = 53, two notes a beat, until right three times in a row. Set off early for the note after the crossing, and let go of the key behind as you pass.',
  },
  {
    situation: 'crossing-late-one-direction',
    playing: { choice: A_FLAT, change: at([1, 4], late(90)) },
    verdict:
      'Every note right. The crossing comes late going up to C, both times, by 90 ms; the rest is even.',
    steps: [1, 4],
    nextStep:
      'only A♭–C–E♭–A♭, ♩ = 53, two notes a beat, until right three times in a row. Set off early for the note after the crossing, and let go of the key behind as you pass.',
  },
  {
    situation: 'crossing-late-one-direction',
    playing: { choice: { ...A, form: 'scale' }, change: at([3, 7, 10], late(90)) },
    verdict: 'Every note right. The crossing comes late going up, each time, by 90 ms; the rest is even.',
    steps: [3, 7, 10],
    nextStep:
      'only B–C♯–D–E, ♩ = 53, two notes a beat, until right three times in a row. Set off early for the note after the crossing, and let go of the key behind as you pass.',
  },
  {
    situation: 'crossing-late-one-direction',
    playing: { choice: A_FLAT, change: at([9, 12], late(90)) },
    verdict:
      'Every note right. The crossing comes late coming down to A♭, both times, by 90 ms; the rest is even.',
    steps: [9, 12],
    nextStep:
      'only E♭–C–A♭–E♭, ♩ = 53, two notes a beat, until right three times in a row. Set off early for the note after the crossing, and let go of the key behind as you pass.',
  },
  {
    situation: 'crossing-late-both-ways',
    playing: { choice: A_FLAT, change: at([1, 4, 9, 12], late(90)) },
    verdict: 'Every note right. The crossings come late both going up and coming down, by 90 ms.',
    steps: [1, 4, 9, 12],
    nextStep:
      'only A♭–C–E♭–A♭–C–E♭–A♭, ♩ = 53, two notes a beat, until right three times in a row; the way down in the same way; then both.',
  },
  {
    situation: 'hands-apart-for-now',
    playing: { choice: { ...A, hands: 'together' }, change: (step) => late(0.9 * SLOPPY[step]!) },
    options: { earlier: [fine, tell({ choice: { ...A, hands: 'left' } })] },
    verdict:
      'Every note right. Hands apart for now: together the time varies by 19 %, each hand alone by 0 % at most.',
    nextStep:
      'each hand alone, A–C♯–E–A–C♯–E–A, ♩ = 49, two notes a beat, until each is even three times in a row; then both hands.',
  },
  {
    situation: 'hands-apart-for-now',
    playing: { choice: { ...A, hands: 'together' }, change: at([3, 4, 9, 10], late(110)) },
    verdict: 'Every note right. Hands apart for now: the crossings come late both ways.',
    steps: [3, 4, 9, 10],
    nextStep:
      'each hand alone, A–C♯–E–A–C♯–E–A, ♩ = 53, two notes a beat, until each is even three times in a row; then both hands.',
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
      'Every note right. Hands apart for now: together the crossings come 105 ms late, in each hand alone 10 ms at most.',
    steps: [3, 4, 9],
    nextStep:
      'each hand alone, A–C♯–E–A–C♯–E–A, ♩ = 53, two notes a beat, until each is even three times in a row; then both hands.',
  },
  {
    situation: 'change-hesitates',
    playing: { choice: PROGRESSION, change: at([3], late(700)) },
    verdict: 'Every note right. The change to the V7 takes 1.9 times as long as the others.',
    steps: [3],
    nextStep:
      'only I–V7, ♩ = 60, one chord a beat: hold the chord, look at the next shape, then move as one, until it comes in time three times in a row.',
  },
  {
    situation: 'late-at-the-turn',
    playing: { choice: A, change: at([7], late(150)) },
    verdict: 'Every note right. The way down begins 150 ms late: the top note is held.',
    steps: [6, 7],
    nextStep:
      'only A–C♯–E–A–E–C♯–A, ♩ = 64, two notes a beat: think of the way down before the top note, until it goes on in time three times in a row.',
  },
  {
    situation: 'uneven-in-pairs',
    playing: { choice: A_SCALE, change: (step) => late(step % 2 === 0 ? -60 : 60) },
    verdict: 'Every note right. The notes limp in pairs, long–short.',
    nextStep:
      'only from A up to A (8 notes), ♩ = 64, two notes a beat, the other way round, short–long, then even, each until right three times in a row.',
  },
  {
    situation: 'uneven',
    playing: { choice: A, change: (step) => late(SLOPPY[step]!) },
    verdict:
      'Every note right. The time from note to note varies by 21 %; up to 4.7 % is even at this tempo.',
    nextStep: 'the whole, ♩ = 55, two notes a beat, with the pulse, until even three times in a row.',
  },
  {
    situation: 'one-hand-leads',
    playing: { choice: { ...TRIADS, hands: 'together' }, spreadMs: (note) => (note < 3 ? 0 : 45) },
    verdict: 'Every note right. The hands are not together: the left hand comes first, by 45 ms.',
    steps: [0, 1, 2, 3, 4, 5, 6],
    nextStep:
      'only from the root position up to the top root position, ♩ = 53, one chord a beat, listening to the right hand, until both come together three times in a row.',
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
    steps: [0, 1, 2, 3, 4, 5, 6],
    nextStep:
      'only from the root position up to the top root position, ♩ = 53, one chord a beat, listening to the right hand, until both come together three times in a row.',
  },
  {
    situation: 'hands-apart',
    playing: {
      choice: { ...TRIADS, hands: 'together' },
      handMs: (step, hand) => ((hand === 'left') === (step % 2 === 0) ? -25 : 25),
    },
    verdict: 'Every note right. The hands are not together, now one first, now the other.',
    steps: [0, 1, 2, 3, 4, 5, 6],
    nextStep:
      'only from the root position up to the top root position, ♩ = 53, one chord a beat: stop on each beat, both hands together, until right three times in a row.',
  },
  {
    situation: 'inner-notes-soft',
    playing: { choice: TRIADS, noteDb: (note) => (note === 1 ? -14 : 0) },
    verdict: 'Every note right. The inner notes are much softer than the outer ones, by 14 dB.',
    nextStep:
      'only from the root position up to the second inversion, ♩ = 60, one chord a beat, each pressed silently first, until every note sounds three times in a row.',
  },
  {
    situation: 'tired',
    playing: { choice: A, change: sloppy(1) },
    options: {
      earlier: [0.1, 0.35, 0.65].map((share) => tell({ choice: A, change: sloppy(share) })),
      sitting: 3,
    },
    verdict:
      'Every note right. Tired? Each of the last four attempts was less even than the one before, from 2 to 21 %.',
    nextStep:
      'rest, and come back later or tomorrow. With pain or numbness stop, and ask your teacher and a health professional.',
  },
  {
    situation: 'chords-spread',
    playing: { choice: { ...TRIADS, hands: 'together' }, spreadMs: (note) => (note === 0 ? 70 : 0) },
    verdict:
      'Every note right. The chords of the left hand are not struck as one: 70 ms from first note to last, the lowest note last.',
    steps: [0, 1, 2, 3, 4, 5, 6],
    nextStep:
      'left hand alone, only from the top root position down to the first inversion, ♩ = 60, one chord a beat: all keys touched first, weight on the lowest note, until three in a row sound as one.',
  },
  {
    situation: 'chords-spread',
    playing: { choice: TRIADS, spreadMs: (note) => 35 * note },
    verdict:
      'Every note right. The chords are not struck as one: 70 ms from first note to last, the highest note last.',
    steps: [0, 1, 2, 3, 4, 5, 6],
    nextStep:
      'only from the top root position down to the first inversion, ♩ = 60, one chord a beat: all keys touched first, weight on the highest note, until three in a row sound as one.',
  },
  {
    situation: 'drift',
    playing: { choice: A, change: (step) => late(9 * step) },
    verdict: 'Every note right. You get slower, from ♩ = 78 to 62.',
    nextStep: 'the whole, ♩ = 62, two notes a beat, with the pulse, until even three times in a row.',
  },
  {
    situation: 'drift',
    playing: { choice: A, change: (step) => late(-6 * step) },
    verdict: 'Every note right. You get faster, from ♩ = 81 to 99.',
    nextStep: 'the whole, ♩ = 80, two notes a beat, with the pulse, until even three times in a row.',
  },
  {
    situation: 'under-tempo',
    playing: { choice: A },
    options: { targetBpm: 100 },
    verdict: 'Every note right. Even, at ♩ = 80; the aim is 100.',
    nextStep: 'the same, ♩ = 85, two notes a beat, until even three times in a row.',
  },
  {
    situation: 'better',
    playing: { choice: A },
    options: { earlier: [lateThumb] },
    verdict: 'Every note right. The crossing is in time now; it was 90 ms late.',
    nextStep: 'the same once more, to make it stay.',
  },
  {
    situation: 'better',
    playing: { choice: A },
    options: { earlier: [wrongE] },
    verdict: 'Every note right now; last time one was not.',
    nextStep: 'the same once more, to make it stay.',
  },
  {
    // G natural only on the way down, and G♯ on the way up: a slip, since the cause was not shown twice.
    situation: 'wrong-notes',
    playing: { choice: { ...A_SCALE, key: 'A minor' }, change: at([8], wrong(67)) },
    verdict: '14 of 15 notes right. One wrong: G natural instead of G♯ coming down.',
    steps: [8],
    nextStep: 'only G♯–A–G♯–F, ♩ = 48, two notes a beat, until right three times in a row; then the whole.',
  },
  {
    situation: 'other-exercise',
    playing: {
      choice: { ...A_SCALE, key: 'A minor', minorScale: 'melodic' },
      as: { ...A_SCALE, key: 'A minor' },
    },
    verdict: 'This sounded like the melodic minor scale, not the harmonic one.',
    nextStep: 'switch to it if that is what you meant, or play the exercise chosen once more.',
  },
  {
    // Five of them: all are counted, the first is named, and all are listed.
    situation: 'wrong-notes',
    playing: { choice: A, change: at([2, 5, 7, 9, 11], wrong(66)) },
    verdict: '8 of 13 notes right. Five not right, the first F♯ instead of E going up; two keys too many.',
    steps: [2, 5, 7, 9, 11, 4, 6],
    nextStep: 'only A–C♯–E–A, ♩ = 48, two notes a beat, until right three times in a row; then the whole.',
  },
  {
    // A fault of one hand is practised with that hand.
    situation: 'wrong-notes',
    playing: {
      choice: { ...A, hands: 'together' },
      change: (step) => (step === 2 ? wrong(54) : step === 9 ? { twice: true } : {}),
    },
    verdict:
      '25 of 26 notes right. One wrong: F♯ instead of E going up (left hand); A is struck twice coming down.',
    steps: [2, 9],
    nextStep:
      'left hand alone, only A–C♯–E–A, ♩ = 48, two notes a beat, until right three times in a row; then the whole.',
  },
  {
    situation: 'wrong-notes',
    playing: {
      choice: A,
      change: (step) =>
        step === 2
          ? wrong(66)
          : step === 5
            ? { twice: true }
            : step === 10
              ? late(130)
              : step === 7
                ? { caught: 86 }
                : {},
    },
    verdict: '12 of 13 notes right. One wrong: F♯ instead of E going up; three more things.',
    steps: [2, 7, 5, 10],
    nextStep: 'only A–C♯–E–A, ♩ = 48, two notes a beat, until right three times in a row; then the whole.',
  },
  {
    situation: 'crossing-late',
    playing: { choice: { ...A, form: 'scale' }, change: at([7, 10], late(120)) },
    verdict:
      'Every note right. The crossing comes late going up to A and going up to D, by 120 ms; the rest is even.',
    steps: [7, 10],
    nextStep:
      'only F♯–G♯–A–B, ♩ = 53, two notes a beat, until right three times in a row. Set off early for the note after the crossing, and let go of the key behind as you pass.',
  },
  {
    situation: 'late-note',
    playing: { choice: A, change: at([5], late(130)) },
    verdict: 'Every note right. E going up comes late, by 130 ms; the rest is even.',
    steps: [5],
    nextStep:
      'only A–C♯–E–A, ♩ = 60, two notes a beat, with the pulse, until even three times in a row; then the whole.',
  },
  {
    situation: 'late-note',
    playing: { choice: { ...A, hands: 'together' }, change: at([5], late(130)) },
    verdict: 'Every note right. E going up comes late, by 130 ms; the rest is even.',
    steps: [5],
    nextStep:
      'only A–C♯–E–A, ♩ = 60, two notes a beat, with the pulse, until even three times in a row; then the whole.',
  },
  {
    // Which hand played was not said, and is not heard: no crossing is named, since they lie elsewhere for the other one.
    situation: 'late-note',
    playing: { choice: A, change: at([3], late(130)), handKnown: false },
    verdict: 'Every note right. A going up comes late, by 130 ms; the rest is even.',
    steps: [3],
    nextStep:
      'only C♯–E–A–C♯, ♩ = 60, two notes a beat, with the pulse, until even three times in a row; then the whole.',
  },
  {
    // The ending counts in no figure of evenness: the rest is at the criterion.
    situation: 'at-the-criterion',
    playing: { choice: A, change: (step) => late(step > 8 ? 35 * (step - 8) : 0) },
    verdict: 'Every note right, and even; you slow down into the end, from ♩ = 80 to 58.',
    nextStep: 'the same again; three in a row, on two days, make it ready.',
  },
  {
    situation: 'at-the-criterion',
    playing: { choice: A, change: at([12], late(200)) },
    verdict: 'Every note right, and even; the last note comes broadly, 200 ms later than even.',
    nextStep: 'the same again; three in a row, on two days, make it ready.',
  },
  {
    situation: 'in-a-rhythm',
    playing: { choice: A_SCALE, change: (step) => late(step % 2 === 0 ? -125 : 125) },
    verdict: 'Every note right. Played long–short: meant so?',
    nextStep: 'if you meant it, the same again; if not, with the pulse, until even twice in a row.',
  },
  {
    situation: 'tempo-sways',
    playing: {
      choice: { ...A, form: 'scale' },
      change: (step) => late(70 * Math.sin((2 * Math.PI * step) / 28)),
    },
    verdict: 'Every note right. The tempo sways between ♩ = 68 and 97, smoothly.',
    nextStep: 'if you meant it, the same again; if not, with the pulse, until even twice in a row.',
  },
  {
    situation: 'hand-ready',
    playing: { choice: A, handKnown: false },
    options: { earlier: [fine, fine], daysBefore: [1, 1] },
    verdict: 'Three in a row, every note right and even: this hand is ready.',
    nextStep: 'the same, ♩ = 86, two notes a beat, until even three times in a row.',
  },
  {
    situation: 'at-the-criterion',
    playing: { choice: A },
    verdict: 'Every note right, and even.',
    nextStep: 'the same again; three in a row, on two days, make it ready.',
  },
  {
    situation: 'twice-at-the-criterion',
    playing: { choice: A },
    options: { earlier: [fine] },
    verdict: 'Every note right, and even, twice in a row. Once more like that.',
    nextStep: 'the same again; three in a row, on two days, make it ready.',
  },
  {
    situation: 'hand-ready',
    playing: { choice: A },
    options: { earlier: [fine, fine], daysBefore: [1, 1] },
    verdict: 'Three in a row, every note right and even: the right hand is ready.',
    nextStep:
      'the left hand alone, ♩ = 80, two notes a beat, until even three times in a row; then hands together.',
  },
  {
    situation: 'hand-ready',
    playing: { choice: A },
    options: {
      earlier: [...[1, 2, 3].map(() => tell({ choice: { ...A, hands: 'left' } })), fine, fine],
      daysBefore: [3, 2, 2, 1, 1],
    },
    verdict: 'Three in a row, every note right and even: the right hand is ready.',
    nextStep:
      'both hands, A–C♯–E–A–C♯–E–A, ♩ = 53, two notes a beat, until right three times in a row; the left hand is ready too.',
  },
  {
    situation: 'key-ready',
    playing: { choice: { ...A, hands: 'together' } },
    options: {
      earlier: [...bothAlone(), ...[1, 2].map(() => tell({ choice: { ...A, hands: 'together' } }))],
      daysBefore: [4, 3, 3, 4, 3, 3, 1, 1],
    },
    verdict: 'A major is ready at ♩ = 80: three in a row, every note right and even.',
    nextStep:
      'the same, ♩ = 86, two notes a beat, until even three times in a row; or the next key round the circle, E major.',
  },
  {
    situation: 'often-enough',
    playing: { choice: A },
    options: { earlier: [fine, fine] },
    verdict: 'Three in a row, every note right and even.',
    nextStep: 'once more on another day; then it is ready.',
  },
  {
    situation: 'often-enough',
    playing: { choice: { ...A, hands: 'together' } },
    options: {
      earlier: [1, 2].map(() => tell({ choice: { ...A, hands: 'together' } })),
      daysBefore: [1, 1],
    },
    verdict: 'Three in a row, every note right and even.',
    nextStep:
      'the left hand alone, ♩ = 80, two notes a beat, until even three times in a row; then hands together.',
  },
];

/** Three attempts of each hand alone, all well. */
function bothAlone(): readonly Report[] {
  return (['left', 'right'] as const).flatMap((hands) =>
    [1, 2, 3].map(() => tell({ choice: { ...A, hands } })),
  );
}
