/** One key under one finger, not yet given to a hand. */
export interface FingeredName {
  /** spelt, with its octave */
  readonly name: string;
  readonly finger: number;
}

/** One place of one hand's part: a single key or a chord, lowest note first. */
export interface Place {
  readonly keys: readonly FingeredName[];
  readonly turn: boolean;
  readonly label?: string;
}

/** Names and fingers side by side. */
export function fingered(names: readonly string[], fingers: readonly number[]): readonly FingeredName[] {
  return names.map((name, index) => ({ name, finger: fingers[index]! }));
}
