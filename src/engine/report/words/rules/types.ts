/**
 * What a situation is for: `sound` and `exercise` speak alone, since nothing else can be judged; `fault` blames, and is counted;
 * `meant` names and does not blame; `asked` asks; `progress` is said where nothing is wrong; `practice`
 * stands first where something was to be practised.
 */
export type Kind = 'sound' | 'exercise' | 'fault' | 'meant' | 'asked' | 'progress' | 'practice';

/** One row of the table of what is said when. */
export interface Rule {
  readonly kind: Kind;
  /** lower speaks first; among equal ranks the graver one does */
  readonly rank: number;
  /** when it holds */
  readonly when: string;
  /** why it is said so, and not otherwise */
  readonly why: string;
  /** where bound or practice come from */
  readonly source: string;
}

export const PRACTICE = 'common practice, no source';
