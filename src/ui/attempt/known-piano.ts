import { mergeHands, type AssessOptions, type Assessment, type HandsAlone } from '../../engine/index.ts';
import type { Devices } from './devices.ts';
import type { Sound } from './sound.ts';

/** What is known of the piano of a sound: of the one that stands here, or of the one in the files that were opened. */
export class KnownPiano {
  readonly #here: Devices['piano'];
  /** what was recorded last, at the piano that stands here: one out of the journal may be of another */
  #recorded: Sound | null = null;
  /** what the files opened here taught of hands alone */
  #ofFiles: HandsAlone | null = null;

  constructor(here: Devices['piano']) {
    this.#here = here;
  }

  recorded(sound: Sound): void {
    this.#recorded = sound;
  }

  /** The piano here is presumed of what is recorded now; elsewhere hands alone are compared with, if they prove to be of it. */
  of(sound: Sound): Partial<AssessOptions> {
    const piano = this.#here?.known ?? null;
    if (sound === this.#recorded) return { piano };
    return { alone: sound.recordedHere ? (piano?.alone ?? null) : this.#ofFiles };
  }

  /** What is recorded teaches the piano here, a file of any other only what is compared with its hands. */
  learnFrom(sound: Sound, assessment: Assessment): void {
    if (sound === this.#recorded) this.#here?.learnFrom(assessment);
    if (!sound.recordedHere && assessment.kind === 'report')
      this.#ofFiles = mergeHands(this.#ofFiles, assessment.handsAlone ?? null);
  }
}
