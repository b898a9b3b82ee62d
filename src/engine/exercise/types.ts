import * as v from 'valibot';
import { BPM, NOTE_NAME, told, type Shape } from '../base/shapes.ts';
import type { Practising } from './intention.ts';

export const HAND = v.picklist(['left', 'right']);
export const HANDS = v.picklist(['left', 'right', 'together']);
export const FORM = v.picklist([
  'arpeggio',
  'triads',
  'broken-triads',
  'progression',
  'scale',
  'dominant-seventh',
  'diminished-seventh',
  'chromatic',
  'five-finger',
  'contrary-motion',
  'two-octaves-apart',
  'tenths-apart',
  'sixths-apart',
  'scale-in-octaves',
  'arpeggio-first-inversion',
  'arpeggio-second-inversion',
  'four-note-chords',
  'broken-four-note-chords',
  'cadence-fifth',
  'cadence-octave',
  'cadence-third',
  'cadence-seventh-fifth',
  'cadence-seventh-octave',
  'cadence-seventh-third',
  'cadence-second-fifth',
  'cadence-second-octave',
  'cadence-second-third',
  'passage',
  'thirds-apart',
  'double-thirds',
  'double-sixths',
]);
export const MINOR_SCALE = v.picklist(['natural', 'harmonic', 'melodic']);
export const MOST_OCTAVES = 4;
export const NOTES_A_BEAT = v.picklist([1, 2, 3, 4, 6]);
export const REGISTER = v.picklist([-3, -2, -1, 1, 2, 3]);
export const PRINCIPLE = v.picklist([
  'second-first',
  'fourth-first',
  'second-on-top',
  'third-finger',
  'fourth-finger',
  'thumbs-together',
  'as-in-c',
]);

/** The mode of a key. */
export type Mode = 'major' | 'minor';
/** One hand. */
export type Hand = Shape<typeof HAND>;
/** Which hands play. */
export type Hands = Shape<typeof HANDS>;
/** What is played in the key; what each is, its row of `FORMS` says. A `passage` is somebody's own, written out in the choice itself. */
export type Form = Shape<typeof FORM>;
/** Which of the three minor scales. */
export type MinorScale = Shape<typeof MINOR_SCALE>;
/** How many steps go to a beat. */
export type NotesABeat = Shape<typeof NOTES_A_BEAT>;

/** A key taken apart. */
export interface KeyParts {
  /** e.g. "F# minor" */
  readonly name: string;
  /** e.g. "F#" */
  readonly tonic: string;
  readonly mode: Mode;
}

/** The most that a passage can hold: what is longer is a piece, and is practised a passage at a time. An upbeat is no bar. */
export const PASSAGE_MOST = {
  bars: 16,
  barBeats: 16,
  notes: 1000,
  keysAtOnce: 10,
  titleLetters: 80,
} as const;
const MOST_BEATS = (PASSAGE_MOST.bars + 1) * PASSAGE_MOST.barBeats;
const BEATS = v.pipe(v.number(), v.gtValue(0), v.maxValue(MOST_BEATS));

export const WRITTEN_NOTE = v.object({
  name: NOTE_NAME,
  hand: HAND,
  beat: told(
    'where it begins: quarter notes from the beginning of the first bar',
    v.pipe(v.number(), v.minValue(0), v.maxValue(MOST_BEATS)),
  ),
  beats: told('how long it is written, quarter notes; notes tied to it are part of it', BEATS),
  finger: v.exactOptional(
    told('1 is the thumb; absent: left open', v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(5))),
  ),
});
export const BAR = v.object({
  beats: told('how long it is, quarter notes; an upbeat is shorter than its time', BEATS),
  count: told(
    'upper number of its time signature',
    v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(64)),
  ),
  unit: told('lower number of its time signature', v.picklist([1, 2, 4, 8, 16, 32])),
});
/** A passage of one's own. Whether there is anything to play in it, `buildExercise` says. */
export const OWN_PASSAGE = v.object({
  title: v.pipe(v.string(), v.maxLength(PASSAGE_MOST.titleLetters)),
  bpm: v.exactOptional(told('the tempo that is written, quarter notes a minute', BPM)),
  bars: told(
    'in order; the first may be an upbeat',
    v.pipe(v.array(BAR), v.minLength(1), v.maxLength(PASSAGE_MOST.bars + 1)),
  ),
  notes: v.pipe(v.array(WRITTEN_NOTE), v.minLength(1), v.maxLength(PASSAGE_MOST.notes)),
});
export type WrittenNote = Shape<typeof WRITTEN_NOTE>;
/** A passage of one's own, as it is written. */
export type OwnPassage = Shape<typeof OWN_PASSAGE>;

const COUNT_OF_STEPS = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(400));
export const WRITTEN_FINGER = v.object({
  hand: HAND,
  step: told('counted from 0', COUNT_OF_STEPS),
  fromBottom: told(
    'which of the keys of this hand there, from its lowest, counted from 0',
    v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(4)),
  ),
  finger: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(5)),
});
export const FINGERING = v.object({
  left: v.exactOptional(told('the left hand by another principle than the usual one', PRINCIPLE)),
  right: v.exactOptional(told('the right hand by another principle than the usual one', PRINCIPLE)),
  written: v.exactOptional(
    told(
      'fingers written over single notes; they take the place of all others there',
      v.pipe(v.array(WRITTEN_FINGER), v.minLength(1), v.maxLength(400)),
    ),
  ),
});
/** By what the fingers of a hand go, where it is not the usual. */
export type Principle = Shape<typeof PRINCIPLE>;
export type WrittenFinger = Shape<typeof WRITTEN_FINGER>;
/** The fingers somebody chose in place of the usual ones. */
export type Fingering = Shape<typeof FINGERING>;

/** What somebody chose to play; whether there is such an exercise, `buildExercise` says. */
export const CHOICE = v.object({
  key: told(
    'e.g. "D major", "F# minor", "Bb major" (# and b; ♯ and ♭ are accepted where text is parsed)',
    v.pipe(v.string(), v.maxLength(20)),
  ),
  form: FORM,
  hands: HANDS,
  octaves: told(
    'forms without octaves (triads, broken-triads, progression) have 1',
    v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(MOST_OCTAVES)),
  ),
  minorScale: v.exactOptional(told('for scales in a minor key; harmonic if not said', MINOR_SCALE)),
  passage: v.exactOptional(told('for `passage`, and for nothing else: what is to be played', OWN_PASSAGE)),
  fingering: v.exactOptional(told('other fingers than the usual ones', FINGERING)),
  notesABeat: v.exactOptional(
    told('of scales and arpeggios: so many to a beat, where it is not the usual', NOTES_A_BEAT),
  ),
  register: v.exactOptional(
    told('so many octaves above where books print it, below it if negative', REGISTER),
  ),
});
/** What somebody chose to play. */
export type ExerciseChoice = Shape<typeof CHOICE>;

/** One key to be struck. */
export interface ExpectedNote {
  readonly midi: number;
  /** spelt for the key with its octave in scientific pitch notation, e.g. "G#4" */
  readonly name: string;
  readonly hand: Hand;
  /** 1 = thumb … 5 = little finger; null: left open, as in a passage of one's own */
  readonly finger: number | null;
  /** of a passage: how long it is written, beats */
  readonly beats?: number;
  /** of a key on which both hands lie: the left hand's finger; the note is the right hand's */
  readonly leftFinger?: number | null;
}

/** The fingering goes against the hand on the way into this step. */
export interface Crossing {
  readonly hand: Hand;
  /** thumb under: right hand going up, left hand going down; over the thumb: the other way */
  readonly kind: 'thumb-under' | 'over-thumb';
  readonly direction: 'up' | 'down';
}

/** One place of the exercise. */
export interface ExpectedStep {
  /** index from 0 */
  readonly step: number;
  /** beats from the first step */
  readonly beat: number;
  /** ascending by midi; one hand or both */
  readonly notes: readonly ExpectedNote[];
  /** crossings into this step, at most one a hand */
  readonly crossings: readonly Crossing[];
  /** the highest place, where the hand turns back */
  readonly turn: boolean;
  /** what the trade calls this place: "I", "IV", "V7", "first inversion", …; only where it has a name */
  readonly label?: string;
  /** of a passage: the bar that it lies in, from 1; 0: the upbeat */
  readonly bar?: number;
  /** a stop or a breath is meant on the way into this step: any time may pass */
  readonly pauseBefore?: true;
  /** of something to be practised: in which copy of it, and its place there, both from 0 */
  readonly copy?: { readonly number: number; readonly place: number };
}

/** An exercise written out. */
export interface Exercise {
  readonly choice: ExerciseChoice;
  /** e.g. "A♭ major · tonic arpeggio, two octaves · right hand" */
  readonly title: string;
  readonly steps: readonly ExpectedStep[];
  /** what of it was to be practised, and how; absent: all of it, once, as it is written */
  readonly practised?: Practising;
}

/** A key for showing. Names are pitch classes spelt for the key, e.g. "G#". */
export interface KeyFacts {
  readonly name: string;
  readonly tonic: string;
  readonly mode: Mode;
  /** sharps or flats in the order in which they are written */
  readonly signature: readonly string[];
  readonly accidental: 'sharps' | 'flats' | 'none';
  /** ascending; in a minor key the natural one, the signature's own */
  readonly scale: readonly string[];
  /** minor keys: the three forms ascending */
  readonly minorScales?: Readonly<Record<MinorScale, readonly string[]>>;
  readonly triad: readonly string[];
  /** I IV V7, or i iv V7 */
  readonly primaryChords: readonly { readonly numeral: string; readonly notes: readonly string[] }[];
}
