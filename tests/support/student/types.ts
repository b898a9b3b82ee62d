import type { Hand } from '../../../src/engine/exercise/index.ts';
import type { ExtraKind } from '../../../src/engine/match/types.ts';

/** One key struck: what the player did, before any sound. */
export interface Keystroke {
  /** seconds from the start of the recording */
  readonly timeSec: number;
  readonly midi: number;
  /** 1..127, fractions allowed */
  readonly velocity: number;
  /** when the key is let go */
  readonly releaseSec: number;
  readonly hand: Hand;
  readonly step: number | null;
  readonly verdict: 'correct' | 'wrong' | 'extra';
  /** the key that should have been struck, of a wrong one */
  readonly wantedMidi?: number;
  readonly extraKind?: ExtraKind;
}

/** An expected note that was not struck. */
export interface Missed {
  readonly step: number;
  readonly midi: number;
  readonly hand: Hand;
  /** left out within the run, or after the student broke off */
  readonly why: 'left-out' | 'broken-off';
}

export interface Performance {
  /** in order of time */
  readonly strokes: readonly Keystroke[];
  readonly missed: readonly Missed[];
  readonly durationSec: number;
  readonly pedal: 'none' | 'held';
}
