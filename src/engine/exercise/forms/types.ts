import type { Hand, KeyParts, MinorScale, NotesABeat, Principle } from '../types.ts';
import type { Place } from './places.ts';

/** What a form is told of the part that it is to write out. */
export interface Part {
  readonly key: KeyParts;
  readonly hand: Hand;
  /** its lowest note in this hand's register, with its octave: "Ab3" */
  readonly start: string;
  readonly octaves: number;
  /** null where the form has none */
  readonly minorScale: MinorScale | null;
  /** by what its fingers go; null: the usual ones */
  readonly principle: Principle | null;
}

/** What it is a kind of; in this order they are offered. */
export const FORM_GROUPS = ['scales', 'arpeggios', 'chords', 'cadences'] as const;
export type FormGroup = (typeof FORM_GROUPS)[number];

/** All that the tool knows of a form; what is said of it stands in the tables of the languages. */
export interface FormDefinition {
  readonly group: FormGroup;
  /** steps a beat */
  readonly notesABeat: NotesABeat;
  /** 1: its length is not chosen */
  readonly mostOctaves: number;
  /** octaves that are offered first; common practice, no source */
  readonly usualOctaves: number;
  /** a minor key has three of it */
  readonly hasMinorScales: boolean;
  /** each step is a chord, struck as a whole */
  readonly isSolid: boolean;
  /** all its notes belong to the key, in minor with the raised sixth and seventh */
  readonly isDiatonic: boolean;
  /** whether it is found among everything that is heard, or only of both hands together, or only where it was chosen */
  readonly recognised: 'always' | 'together' | 'where-chosen';
  /** songs are full of it: recognised with faults it is asked and not told */
  readonly isCommonElsewhere: boolean;
  /** its steps are named by numerals: "I", "V7" */
  readonly hasNumerals: boolean;
  /** so many octaves below the right hand lies what the left plays; more than one where both would else want the same key */
  readonly leftOctavesBelow: 0 | 1 | 2;
  /** only both hands make it what it is: one alone plays a scale, which is practised of it and never offered */
  readonly needsBothHands: boolean;
  /** the table that its fingers and the alternatives to them come from; null: its own, without any */
  readonly fingeredAs: 'scale' | 'arpeggio' | 'further-arpeggio' | null;
  /** the hand moves along the keyboard by crossings, which are looked for by its fingers */
  readonly hasCrossings: boolean;
  /** its lowest note, without octave */
  readonly lowest: (key: KeyParts) => string;
  /** one hand's part, step by step */
  readonly places: (part: Part) => readonly Place[];
}
