import type { Passage } from '../listen/index.ts';
import type { Recognition } from '../match/index.ts';

/** One attempt in a recording of many, or other playing, whose `recognition` then has no choice. */
export interface SortedPassage extends Passage {
  readonly recognition: Recognition;
}
