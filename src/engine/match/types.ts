import type { Exercise, ExerciseChoice, ExpectedNote, Hand } from '../exercise/index.ts';
import type { Passage } from '../listen/index.ts';

/** Why a note is extra: beside the right one, the same again, before going back to an earlier place, or none of these. */
export type ExtraKind = 'slip' | 'repeat' | 'restart' | 'other';

/** What became of one expected note. `played` is an index into Heard.notes. */
export type MatchedNote = {
  readonly step: number;
  /** as expected, at the octave actually played */
  readonly expected: ExpectedNote;
} & (
  | { readonly verdict: 'correct' | 'wrong'; readonly played: number }
  | { readonly verdict: 'missed' }
  /** `heldOver`: a common tone that may have been held over from the chord before instead of struck again */
  | {
      readonly verdict: 'unsure';
      readonly reason: string;
      readonly played?: number;
      readonly heldOver?: true;
    }
);

/** A note that answers no expected note. */
export interface ExtraNote {
  readonly played: number;
  readonly kind: ExtraKind;
  /** the step during which it sounded */
  readonly step: number;
}

/** Something about the course of the attempt as a whole. */
export type CourseRemark =
  | { readonly kind: 'started-late'; readonly firstStep: number }
  | { readonly kind: 'broken-off'; readonly lastStep: number }
  | { readonly kind: 'restarted'; readonly atStep: number; readonly backToStep: number }
  /** a gap of more than three beats after `atStep`; gapSec: from that onset to the next */
  | { readonly kind: 'stopped'; readonly atStep: number; readonly gapSec: number }
  /** `hand`: only this one, beyond where both lie */
  | { readonly kind: 'other-octave'; readonly octaveShift: number; readonly hand?: Hand }
  /** the piano stands so low that the listener read every key a semitone off; `cents` is its tuning set right */
  | { readonly kind: 'read-a-semitone-off'; readonly cents: number }
  | { readonly kind: 'played-again'; readonly passages: readonly Passage[] };

/** Expected notes and played notes tied together. */
export interface Alignment {
  readonly exercise: Exercise;
  /** octaves by which the attempt lies above (+) or below (−) what is written */
  readonly octaveShift: number;
  /** semitones to add to Heard's midi numbers to get the keys struck: 1 on a piano 60–90 cents flat, else 0 */
  readonly semitoneShift: number;
  /** every expected note, by step, then pitch */
  readonly matched: readonly MatchedNote[];
  readonly extras: readonly ExtraNote[];
  readonly remarks: readonly CourseRemark[];
  /** the stretch of the recording that is this run of the exercise; notes outside belong to other runs */
  readonly run: Passage;
  /** 0..1: how well what was heard is explained by this exercise */
  readonly fit: number;
  /** another exercise that explains it clearly better */
  readonly betterFit?: { readonly choice: ExerciseChoice; readonly fit: number };
}

/** What may be known besides the notes. */
export interface RecogniseOptions {
  /** the piano's own tuning against A4 = 440 Hz, good to half a semitone; null: it may be read a semitone off */
  readonly pianoCents: number | null;
}

/** Which exercise of the set was played, going by the notes alone. */
export interface Recognition {
  /** null: cannot tell */
  readonly choice: ExerciseChoice | null;
  /** 0..1: the share of such findings that are right; of the likeliest reading where `choice` is null */
  readonly confidence: number;
  /** octaves by which it lies above (+) or below (−) what is written */
  readonly octaveShift: number;
  /** what else it may be, likeliest first; where `choice` is null its likeliest reading comes first */
  readonly alternatives: readonly { readonly choice: ExerciseChoice; readonly fit: number }[];
}
