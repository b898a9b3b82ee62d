import type { Hand } from '../exercise/index.ts';
import type { Heard } from '../listen/index.ts';
import type { Alignment } from '../match/index.ts';

/** What speaks for and against a note that the blind ear did not report. */
export interface Evidence {
  /** log odds of the blind ear's first belief that this key was struck at that moment */
  readonly belief: number;
  /** its loudness as the ear reads it, against the notes of the same hand that were heard, in units of 6 dB */
  readonly softness: number;
}

/** One expected note listened for again: the blind finding, the evidence and the decision, side by side. */
export interface Recheck {
  readonly step: number;
  readonly midi: number;
  readonly hand: Hand;
  readonly blind: 'missed' | 'unsure';
  readonly evidence: Evidence;
  /** that the key was struck, 0..1 */
  readonly probability: number;
  readonly decision: 'struck' | 'not-struck' | 'unsure';
}

/** What a second listening made of the first. */
export interface Rechecked {
  /** the first listening with the notes found again among its own; the blind finding itself is left as it was */
  readonly heard: Heard;
  /** `played` counts in the notes of the `heard` beside it */
  readonly alignment: Alignment;
  /** every note that was listened for again, by step, then pitch */
  readonly rechecks: readonly Recheck[];
}
