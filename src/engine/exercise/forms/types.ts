import type { Hand, KeyParts, MinorScale } from '../types.ts';
import type { Place } from './places.ts';

/** What a form is told of the part that it is to write out. */
export interface Part {
  readonly key: KeyParts;
  readonly hand: Hand;
  /** the lowest tonic of this hand's register, with its octave: "Ab3" */
  readonly start: string;
  readonly octaves: number;
  /** null where the form has none */
  readonly minorScale: MinorScale | null;
}

/** All that the tool knows of a form; what is said of it stands in the tables of the languages. */
export interface FormDefinition {
  /** steps a beat */
  readonly notesABeat: 1 | 2 | 3;
  /** 1: its length is not chosen */
  readonly mostOctaves: number;
  /** octaves that are offered first; common practice, no source */
  readonly usualOctaves: number;
  /** a minor key has three of it */
  readonly hasMinorScales: boolean;
  /** each step is a chord, struck as a whole */
  readonly isSolid: boolean;
  /** one hand's part, step by step */
  readonly places: (part: Part) => readonly Place[];
}
