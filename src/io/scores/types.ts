import type { OwnPassage, WrittenNote } from '../../engine/index.ts';
import { EvenfallError } from '../troubles/index.ts';

/** A file of music of which no passage can be had: why, and the way out. */
export class ScoreError extends EvenfallError {
  override readonly name = 'ScoreError';
}

/** Music of any length as a file has it, before a passage is cut out of it. Beats are quarter notes from its beginning. */
export interface WholeScore {
  readonly title: string;
  /** e.g. "F# minor" */
  readonly key: string;
  /** quarter notes a minute; null: not written */
  readonly bpm: number | null;
  readonly bars: OwnPassage['bars'];
  readonly notes: readonly WrittenNote[];
  readonly hindrances: readonly Hindrance[];
}

/** What in it a piano cannot play, or nobody plays in a row: it hinders where all of these bars are chosen, counted from 0. */
export interface Hindrance {
  readonly from: number;
  readonly to: number;
  readonly trouble: 'music-grace' | 'music-no-pitches' | 'music-between-keys' | 'music-endings';
}

/** Which bars of it, from 1, the last one inclusive; an upbeat goes with the first. */
export interface Bars {
  readonly from: number;
  readonly to: number;
}
