import type { Hand } from '../exercise/index.ts';
import type { Heard, PlayedNote } from '../listen/index.ts';
import type { Alignment, ExtraKind, MatchedNote } from '../match/index.ts';
import type { Answer, Asker } from './asker.ts';
import type { HandHeard } from './hands.ts';
import type { Strays } from './strays.ts';

/** One key listened for again at the moment of a step: the blind finding, the evidence and the decision, side by side. */
export interface Recheck {
  readonly step: number;
  /** the key asked about, as MIDI number of the key itself (semitone shift taken out) */
  readonly midi: number;
  readonly hand: Hand;
  /** what was asked: whether a written note was struck, another key in its place, or a key that is not written */
  readonly asked: 'written' | 'in-its-place' | 'extra';
  /** what match had made of it */
  readonly blind: MatchedNote['verdict'] | 'extra' | 'not-heard';
  /** probability that the blind ear gave to this key at that moment; 0: none */
  readonly blindProbability: number;
  /** log odds of the closer look */
  readonly logOdds: number;
  /** onset by the closer look, s, and the error to be expected of it, s */
  readonly timeSec: number;
  readonly spreadSec: number;
  readonly decision: 'struck' | 'not-struck' | 'unsure';
}

/** What a second listening made of the first. */
export interface Rechecked {
  /** the first listening with notes found again, moved or withdrawn; the blind finding itself is left as it was */
  readonly heard: Heard;
  /** `played` counts in the notes of the `heard` beside it */
  readonly alignment: Alignment;
  /** every question that was asked, in order of step */
  readonly rechecks: readonly Recheck[];
}

/** All that is known while an attempt is listened to again. */
export interface Listening {
  readonly asker: Asker;
  /** the first listening */
  readonly heard: Heard;
  readonly alignment: Alignment;
  /** what the closer look says of each matched note, in their order; null: nothing was heard of its step */
  readonly answers: readonly (Answer | null)[];
  readonly hands: Readonly<Record<Hand, HandHeard>>;
  readonly strays: Strays;
  /** every question so far */
  readonly rechecks: Recheck[];
}

/** A note that answers no written one. */
export interface HeardExtra {
  readonly note: PlayedNote;
  readonly kind: ExtraKind;
  readonly step: number;
}
