/** One value of a figure, at one step. */
export interface GraphPoint {
  readonly step: number;
  /** what is touched to hear it: the place of its spot on the string; null: nothing to hear */
  readonly spot: number | null;
  readonly value: number;
  /** under the axis, e.g. "A♭" */
  readonly name: string;
  /** of both hands, which: the left hand's points are hollow */
  readonly hand: 'left' | 'right' | null;
  /** worth a look: drawn larger, in the accent, with its figure */
  readonly look: boolean;
  /** the point in words, for screen readers and the line under the figure */
  readonly words: string;
}

/** A figure of the detail: values along the steps. */
export interface GraphFigure {
  /** stable, for keys and addresses */
  readonly id: string;
  readonly title: string;
  /** what it means, in a teacher's words */
  readonly meaning: string;
  /** how it is defined, with its source where it has one */
  readonly definition: string;
  readonly unit: string;
  readonly decimals: number;
  /** where stems begin: 0, or the middle value */
  readonly base: number;
  /** signs are written: "+12" */
  readonly signed: boolean;
  /** between these a difference does not matter; null: no such band */
  readonly band: { readonly from: number; readonly to: number; readonly words: string } | null;
  /** what lies above and below the base, e.g. "late" and "early" */
  readonly above: string;
  readonly below: string;
  /** points of one hand are joined: the figure shows a course */
  readonly joined: boolean;
  readonly points: readonly GraphPoint[];
}
