import type { Language } from '../../../engine/index.ts';

/** A pile of recordings as its summary page shows it; all texts are plain. */
export interface PileSummary {
  readonly language: Language;
  readonly title: string;
  /** how many of what, in one sentence */
  readonly summary: string;
  readonly students: readonly {
    readonly name: string;
    readonly attempts: readonly {
      readonly exercise: string;
      readonly verdict: string;
      /** beats a minute, '' where it was not measured */
      readonly tempo: string;
      /** what changed since the attempt before, '' for the first */
      readonly changed: string;
      /** day, file and place in it */
      readonly where: string;
      /** address of its own page; null: it has none */
      readonly page: string | null;
    }[];
  }[];
  /** what could not be read, or where nobody plays, and why */
  readonly without: readonly string[];
  /** what stands above these */
  readonly notListed: string;
}
