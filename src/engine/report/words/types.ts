import type { Form, Hands, MinorScale } from '../../exercise/index.ts';

/*
 * The facts of which a sentence is made, for whatever language says it. Names of notes and keys come ready to be said;
 * `tempoBpm`, `…Ms` and counts are whole numbers.
 */

/** What is said of a situation, without full stops; `half`: the same in half a sentence, to come second. */
export interface Said {
  readonly sentence: string;
  readonly half?: string;
  /** the part of `sentence` to underline */
  readonly emphasis: string;
  readonly nextStep: string;
}

/** A chord among those of the exercise: its name, or which it is by number where it has none. */
export interface ChordPlace {
  /** "V7", "first inversion", … */
  readonly label: string | null;
  /** counted from 1 */
  readonly number: number;
  /** which of several with this label; `up`, `down`: of the way */
  readonly which: 'only' | 'first' | 'middle' | 'last' | 'top' | 'up' | 'down';
}

/** Where a step lies. */
export type StepPlace =
  | { readonly kind: 'start' | 'end' | 'top' | 'up' | 'down' | 'anywhere' }
  | { readonly kind: 'chord'; readonly chord: ChordPlace };

/** A step by its note and place; in exercises of chords by its place alone. */
export interface NamedStep {
  readonly note: string;
  readonly place: StepPlace;
}

/** A stretch of steps. */
export type NamedStretch =
  /** every note or numeral in order */
  | { readonly kind: 'all'; readonly names: readonly string[] }
  | { readonly kind: 'chords'; readonly from: ChordPlace; readonly to: ChordPlace }
  | {
      readonly kind: 'ends';
      readonly from: string;
      readonly to: string;
      readonly way: 'up' | 'down' | 'up-and-down';
    };

/** What is to be practised, by whom and how fast. */
export interface Task {
  readonly hands: Hands;
  readonly stretch: NamedStretch;
  readonly tempoBpm: number;
}

/** An expected note that was not struck, or for which another was. */
export interface FaultFacts {
  readonly wanted: string;
  /** null: nothing was struck; `octave`: the right note an octave off */
  readonly struck: string | 'octave too high' | 'octave too low' | null;
  readonly place: StepPlace;
  /** said where both hands play */
  readonly hand: 'left' | 'right' | null;
}

/** Of several alike, how often. */
export type HowOften =
  | { readonly kind: 'unsaid' }
  | { readonly kind: 'once'; readonly place: StepPlace }
  | { readonly kind: 'both' }
  | { readonly kind: 'each' }
  | { readonly kind: 'some'; readonly count: number };

/** How a played exercise differs from the chosen one. */
export type Difference =
  | { readonly kind: 'form'; readonly like: Form; readonly ofKey: string | null; readonly not: Form }
  | { readonly kind: 'key'; readonly like: string; readonly not: string }
  | { readonly kind: 'both-hands'; readonly notHand: 'left' | 'right' }
  | { readonly kind: 'one-hand' }
  | { readonly kind: 'octaves'; readonly like: number; readonly not: number }
  | { readonly kind: 'minor-scale'; readonly like: MinorScale | ''; readonly not: MinorScale | '' };

/** A note of a chord or a run with its finger. */
export interface FingeredName {
  readonly name: string;
  readonly finger: number;
}

/** A finger; with both hands also whose it is. */
export interface FingerOf {
  readonly finger: number;
  readonly hand: 'left' | 'right' | null;
}

/** Why hands together are much worse than apart: crossings late both ways; or figures now and of the worse hand alone. */
export type ApartReason =
  | { readonly kind: 'crossings' }
  | { readonly kind: 'delay'; readonly together: number; readonly alone: number }
  | { readonly kind: 'uneven'; readonly together: number; readonly alone: number };

/** The signature of a key. */
export interface SignatureFacts {
  readonly kind: 'sharps' | 'flats' | 'none';
  readonly names: readonly string[];
}

/** The figures in which an attempt can be better than the last. */
export type Bettered = 'crossing' | 'evenness' | 'turn' | 'change' | 'spread' | 'drift';
