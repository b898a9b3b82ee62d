import { mergePianos, pianoAfter, type Assessment, type PianoProfile } from '../../../engine/index.ts';
import { readPiano } from '../../../io/check/index.ts';
import { recall, remember, type Settings } from '../../../io/settings/index.ts';

const NAME = 'piano';

/** The piano that the device stands at, remembered on it: told by the room check, refined by every attempt. */
export class ThisPiano {
  readonly #settings: Settings;

  constructor(settings: Settings) {
    this.#settings = settings;
  }

  /** null: nothing is known of it yet */
  get known(): PianoProfile | null {
    return readPiano(recall(this.#settings, NAME));
  }

  /** What a room check came to, or one attempt more. */
  learn(taught: PianoProfile | null): void {
    if (taught !== null) this.#keep(mergePianos(this.known, taught));
  }

  #keep(piano: PianoProfile | null): void {
    if (piano !== null) remember(this.#settings, NAME, piano);
  }

  /** Only an attempt that was played teaches: what was not understood may have been another thing than this piano. */
  learnFrom(assessment: Assessment): void {
    this.#keep(pianoAfter(this.known, assessment));
  }

  /** Another piano stands here now. */
  forget(): void {
    remember(this.#settings, NAME, null);
  }
}
