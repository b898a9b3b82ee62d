import type { Language } from '../engine/index.ts';
import type { Review } from '../io/review/index.ts';
import type { PileSummary } from './pile/pages.ts';

/** What the command is given, since it stands below the terminal or outside of src. */
export interface Wiring {
  /** of the package */
  readonly version: string;
  /** A review → one HTML page that needs nothing else. */
  readonly writePage: (review: Review, language: Language) => Promise<string>;
  /** A pile of recordings → its summary page. */
  readonly writeSummary: (pile: PileSummary) => Promise<string>;
}
