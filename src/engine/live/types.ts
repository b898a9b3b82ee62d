import type { ExerciseChoice } from '../exercise/index.ts';
import type { PianoProfile } from '../listen/index.ts';

/** What the live listener tells, in the order in which it comes to know it. Times: seconds of sound since the ear was opened. */
export type LiveEvent =
  /** about ten times a second */
  | {
      readonly kind: 'level';
      /** end of the moment spoken of */
      readonly timeSec: number;
      /** greatest sample since the last such event, dB of full scale; −120 for silence */
      readonly peakDb: number;
      readonly clipped: boolean;
      /** level of the room's own noise (full-scale sine = 0 dB); null until a second has been heard */
      readonly noiseDb: number | null;
    }
  /**
   * A key was struck. First told some 50 ms after the hammer as a guess (`final` false), then within half a second once more
   * under the same id, certain and with its moment and key set right, or withdrawn. A note that was not guessed comes certain at
   * once. While hands play octaves a guess may stay one, neither certain nor withdrawn: a string or a partial of the other hand's.
   * The exercise has no say in it: what is expected would be heard too easily. `levelDb`: about a middling note.
   */
  | {
      readonly kind: 'struck';
      readonly id: number;
      readonly timeSec: number;
      readonly midi: number;
      readonly levelDb: number;
      readonly final: boolean;
    }
  /** that guess was no note */
  | { readonly kind: 'withdrawn'; readonly id: number }
  /**
   * Playing is under way: three notes are surely this piano's. `timeSec` is the first string from which on the playing went on,
   * `cutSec` where its sound begins; what was struck since `cutSec` belongs to it. Before, a note that might be a word or a knock
   * is not told at all. Told again where it has begun anew: what was before is no part of it.
   */
  | { readonly kind: 'started'; readonly timeSec: number; readonly cutSec: number }
  /** The exercise is not over: the rest is waited for. Told once for each such stop. */
  | { readonly kind: 'waits'; readonly timeSec: number }
  /**
   * An attempt is over: its last step has been struck, it has been begun anew, or nothing came any more. Its sound lies between
   * `startSec` and `endSec`, both heard already.
   */
  | { readonly kind: 'ended'; readonly startSec: number; readonly endSec: number; readonly notes: number }
  /** What was under way was no exercise, and is over. */
  | { readonly kind: 'let-go'; readonly timeSec: number }
  /** A note or two that began nothing (a key touched in passing, a word), up to that moment: nothing is under way. */
  | { readonly kind: 'forgotten'; readonly timeSec: number };

/**
 * What is to be played, by which attempts end: an exercise that was chosen; any of the set or of one's own; or a part of one, which a silence ends, and
 * of which all is told.
 */
export type Expected = ExerciseChoice | 'any' | 'part';

/** What may be known before live listening, and when an attempt begins and ends. */
export interface LiveOptions {
  readonly expected: Expected;
  /** passages of one's own that may be played without being chosen */
  readonly own: readonly ExerciseChoice[];
  /** what is no exercise, or another than was chosen, is over so long after its last onset; slow playing is given longer */
  readonly silenceSec: number;
  /** sound kept before an attempt's first onset, seconds */
  readonly beforeSec: number;
  /** what is known of this piano; null: its tuning is read on the way */
  readonly piano: PianoProfile | null;
}

export const LIVE_DEFAULTS: LiveOptions = {
  expected: 'any',
  own: [],
  silenceSec: 2.5,
  beforeSec: 1,
  piano: null,
};

/** A stretch in which the device itself makes a sound: nothing struck then counts (`voice`), or no blow alone does (`click`). */
export interface OwnSound {
  readonly fromSec: number;
  readonly toSec: number;
  readonly kind: 'voice' | 'click';
}
