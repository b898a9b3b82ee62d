import * as v from 'valibot';
import { listOf, NUMBER, SECONDS, STEP, told, type Shape } from '../base/shapes.ts';
import type { Exercise, ExerciseChoice, ExpectedNote, Form, Hand } from '../exercise/index.ts';
import { CHOICE, HAND } from '../exercise/types.ts';
import type { Passage } from '../listen/index.ts';
import { PASSAGE } from '../listen/types.ts';
import type { Notice } from '../notices/index.ts';

export const EXTRA_KIND = v.picklist(['slip', 'repeat', 'restart', 'other']);
/** Why a note is extra: beside the right one, the same again, before going back to an earlier place, or none of these. */
export type ExtraKind = Shape<typeof EXTRA_KIND>;

/** What became of one expected note. `played` is an index into Heard.notes. */
export type MatchedNote = {
  readonly step: number;
  /** as expected, at the octave actually played */
  readonly expected: ExpectedNote;
} & (
  | { readonly verdict: 'correct' | 'wrong'; readonly played: number }
  /** `sure`: how probable it is by a closer look, 0..1; left out: nothing covers it, and it was not heard */
  | { readonly verdict: 'missed'; readonly sure?: number }
  /** `heldOver`: a common tone that may have been held over from the chord before instead of struck again */
  | {
      readonly verdict: 'unsure';
      readonly reason: Notice;
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

/** Octaves above (+) or below (−) what is written. */
export const OCTAVES_OFF = told(
  'octaves by which it lies above (+) or below (−) what is written',
  v.pipe(v.number(), v.integer(), v.minValue(-8), v.maxValue(8)),
);

export const REMARK = v.variant('kind', [
  v.object({ kind: v.literal('started-late'), firstStep: STEP }),
  v.object({ kind: v.literal('broken-off'), lastStep: STEP }),
  v.object({ kind: v.literal('restarted'), atStep: STEP, backToStep: STEP }),
  v.object({
    kind: told('a gap of more than three beats after `atStep`', v.literal('stopped')),
    atStep: STEP,
    gapSec: told('from that onset to the next', SECONDS),
  }),
  v.object({
    kind: v.literal('other-octave'),
    octaveShift: OCTAVES_OFF,
    hand: v.exactOptional(told('only this one, beyond where both lie', HAND)),
  }),
  v.object({
    kind: told(
      'the piano stands so low that the listener read every key a semitone off',
      v.literal('read-a-semitone-off'),
    ),
    cents: told('its tuning set right', NUMBER),
  }),
  v.object({ kind: v.literal('played-again'), passages: listOf(PASSAGE) }),
]);
/** Something about the course of the attempt as a whole. */
export type CourseRemark = Shape<typeof REMARK>;

/** Another exercise that explains what was played clearly better than the one that is aligned. */
export interface Better {
  readonly choice: ExerciseChoice;
  /** 0..1 */
  readonly fit: number;
  /** it was surely that one */
  readonly sure: boolean;
}

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
  readonly betterFit?: Better;
  /** what had been chosen, where it was surely another exercise that was played, and that one is aligned */
  readonly chosen?: ExerciseChoice;
  /** of one hand alone */
  readonly handLikelihood?: HandLikelihood;
}

const LIKELIHOOD = v.pipe(v.number(), v.minValue(0), v.maxValue(1));
export const HAND_LIKELIHOOD = told(
  'how likely each hand is to have played: 1 and 0 where somebody said which, else by the register, since a hand cannot be heard',
  v.object({ left: LIKELIHOOD, right: LIKELIHOOD }),
);
/** How likely each hand is to have played; both add up to 1. */
export type HandLikelihood = Shape<typeof HAND_LIKELIHOOD>;

/** A hand that is known to have played: in which form, from which key on (MIDI). */
export interface HandPlayed {
  readonly form: Form;
  readonly hand: Hand;
  readonly midi: number;
}

/** What may be known besides the notes. */
export interface RecogniseOptions {
  /** the tuning of the piano that is played as a rule, against A4 = 440 Hz; null: it is not known, and may be read a semitone off */
  readonly pianoCents: number | null;
  /** the tunings of other pianos that this player is known to play, a school's or a friend's, against A4 = 440 Hz */
  readonly elsewhereCents: readonly number[];
  /** what is known of the player's hands, from attempts of which somebody said which hand it was */
  readonly handsPlayed: readonly HandPlayed[];
  /** passages of one's own that it may be, besides the set */
  readonly own: readonly ExerciseChoice[];
}

export const RECOGNITION = v.object({
  choice: told('null: cannot tell', v.nullable(CHOICE)),
  confidence: told(
    'the share of such findings that are right; of the likeliest reading where `choice` is null',
    v.pipe(v.number(), v.minValue(0), v.maxValue(1)),
  ),
  octaveShift: OCTAVES_OFF,
  alternatives: told(
    'what else it may be, likeliest first; where `choice` is null its likeliest reading comes first',
    listOf(v.object({ choice: CHOICE, fit: NUMBER })),
  ),
  handLikelihood: v.exactOptional(told('of one hand alone, of the likeliest reading', HAND_LIKELIHOOD)),
});
/** Which exercise of the set was played, going by the notes alone. */
export type Recognition = Shape<typeof RECOGNITION>;
