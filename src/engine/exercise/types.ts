import * as v from 'valibot';
import { told, type Shape } from '../base/shapes.ts';
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
]);
export const MINOR_SCALE = v.picklist(['natural', 'harmonic', 'melodic']);
export const MOST_OCTAVES = 4;

/** The mode of a key. */
export type Mode = 'major' | 'minor';
/** One hand. */
export type Hand = Shape<typeof HAND>;
/** Which hands play. */
export type Hands = Shape<typeof HANDS>;
/** What is played in the key: both triad forms are the tonic triad with its inversions, the progression is I–IV–I–V7–I. */
export type Form = Shape<typeof FORM>;
/** Which of the three minor scales. */
export type MinorScale = Shape<typeof MINOR_SCALE>;

/** A key taken apart. */
export interface KeyParts {
  /** e.g. "F# minor" */
  readonly name: string;
  /** e.g. "F#" */
  readonly tonic: string;
  readonly mode: Mode;
}

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
  minorScale: v.exactOptional(told('for `scale` in a minor key; harmonic if not said', MINOR_SCALE)),
});
/** What somebody chose to play. */
export type ExerciseChoice = Shape<typeof CHOICE>;

/** One key to be struck. */
export interface ExpectedNote {
  readonly midi: number;
  /** spelt for the key with its octave in scientific pitch notation, e.g. "G#4" */
  readonly name: string;
  readonly hand: Hand;
  /** 1 = thumb … 5 = little finger */
  readonly finger: number;
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
  /** beats from the first step; arpeggio and scale have two notes a beat, broken triads three, chords one */
  readonly beat: number;
  /** ascending by midi; one hand or both */
  readonly notes: readonly ExpectedNote[];
  /** crossings into this step, at most one a hand */
  readonly crossings: readonly Crossing[];
  /** the highest place, where the hand turns back */
  readonly turn: boolean;
  /** what the trade calls this place: "I", "IV", "V7", "first inversion", …; only where it has a name */
  readonly label?: string;
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
