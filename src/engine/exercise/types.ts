/** The mode of a key. */
export type Mode = 'major' | 'minor';
/** One hand. */
export type Hand = 'left' | 'right';
/** Which hands play. */
export type Hands = Hand | 'together';
/** What is played in the key: both triad forms are the tonic triad with its inversions, the progression is I–IV–I–V7–I. */
export type Form = 'arpeggio' | 'triads' | 'broken-triads' | 'progression' | 'scale';
/** Which of the three minor scales. */
export type MinorScale = 'natural' | 'harmonic' | 'melodic';

/** What somebody chose to play. */
export interface ExerciseChoice {
  /** e.g. "D major", "F# minor", "Bb major" (# and b; ♯ and ♭ are accepted where text is parsed) */
  readonly key: string;
  readonly form: Form;
  readonly hands: Hands;
  /** 1..4; forms without octaves (triads, broken-triads, progression) have 1 */
  readonly octaves: number;
  /** for `scale` in a minor key; harmonic if not said */
  readonly minorScale?: MinorScale;
}

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
}

/** An exercise written out. */
export interface Exercise {
  readonly choice: ExerciseChoice;
  /** e.g. "A♭ major · tonic arpeggio, two octaves · right hand" */
  readonly title: string;
  readonly steps: readonly ExpectedStep[];
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
