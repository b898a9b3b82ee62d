import { keepFingering, withKeptFingers, type ExerciseChoice } from '../../engine/index.ts';
import { readChoice } from '../../io/check/index.ts';
import { recall, remember, type Settings } from '../../io/settings/index.ts';

/** under this name they are remembered */
const NAME = 'fingerings';

/** The fingers that somebody here has chosen in place of the usual ones, exercise by exercise; they outlive the page. */
export class Fingerings {
  /** newest first */
  kept: readonly ExerciseChoice[] = $state.raw([]);
  readonly #settings: Settings | null;

  /** Null: they last as long as this does. */
  constructor(settings: Settings | null = null) {
    this.#settings = settings;
    const found = settings === null ? null : recall(settings, NAME);
    if (Array.isArray(found)) this.kept = found.flatMap((one) => readChoice(one) ?? []);
  }

  /** The choice under the fingers kept for it, where it says nothing of its own. */
  of(choice: ExerciseChoice): ExerciseChoice {
    return withKeptFingers(choice, this.kept);
  }

  /** From here on the hands of this choice play it, at any length, as it says. */
  keep(choice: ExerciseChoice): void {
    this.kept = keepFingering(this.kept, choice);
    if (this.#settings !== null) remember(this.#settings, NAME, this.kept);
  }
}
