import type { ExerciseChoice } from '../../engine/index.ts';
import type { Opened } from '../../io/opened/index.ts';
import type { SortedAttempt } from '../../io/sorting/index.ts';
import { clock } from '../kit/figures.ts';
import type { CurrentAttempt } from './current-attempt.svelte.ts';

/** What opening several at once needs of the device, passed in. */
export interface TogetherDevices {
  readonly opened: Opened;
  /** a recording → the attempts in it, each cut out and told; rejects where it cannot */
  readonly sort: (file: Blob, name: string) => Promise<readonly SortedAttempt[]>;
}

/** One of several that were opened together, or lay in one file. */
export interface OneOfSeveral {
  readonly id: string;
  readonly name: string;
  /** what was told of it; null: it was not listened to yet, or not recognised */
  readonly exercise: ExerciseChoice | null;
}

/** Recordings that came at once, and attempts that lie in one file: all of them can be reached, whichever is in front. */
export class Together {
  /** those that belong to the attempt in front, in their order; that one alone is none */
  list: readonly OneOfSeveral[] = $state.raw([]);
  readonly #devices: TogetherDevices;
  readonly #currentAttempt: CurrentAttempt;

  constructor(devices: TogetherDevices, currentAttempt: CurrentAttempt) {
    this.#devices = devices;
    this.#currentAttempt = currentAttempt;
  }

  /** Keeps all of them and tells the first; the others are told when they are asked for. */
  async open([first, ...others]: readonly File[]): Promise<void> {
    if (first === undefined) return;
    const { opened } = this.#devices;
    const id = opened.newId();
    const listening = this.#currentAttempt.open(first, id);
    let beside = id;
    for (const file of others) {
      beside = opened.newId();
      await opened.keep({ id: beside, group: id, name: file.name, file, choice: null, report: null });
    }
    const assessment = await listening;
    // One that could not be opened is not there any more; those that came with it are.
    await this.look(this.#currentAttempt.front === id ? id : beside, id);
    // A pause in the playing may part two attempts.
    if (others.length === 0 && (assessment?.heard.passages.length ?? 0) > 1) await this.#lookInto(first, id);
  }

  /** Reads what belongs to an attempt. `inFront`: that which need not be listed alone. */
  async look(id: string | null, inFront = id): Promise<void> {
    const heads = id === null ? [] : await this.#devices.opened.together(id);
    this.list = heads.every((head) => head.id === inFront)
      ? []
      : heads.map(({ id: one, name, report }) => ({ id: one, name, exercise: report?.exercise ?? null }));
  }

  async #lookInto(file: File, id: string): Promise<void> {
    const { opened, sort } = this.#devices;
    const found = await sort(file, file.name).catch(() => []);
    const attempts = found.filter(({ report }) => report !== null);
    if (attempts.length < 2) return;
    for (const { startSec, report, sound } of attempts)
      await opened.keep({
        id: opened.newId(),
        group: id,
        name: `${file.name} · ${clock(startSec)}`,
        file: new Blob([sound.bytes.slice().buffer], { type: sound.mime }),
        choice: null,
        report,
      });
    if (this.#currentAttempt.front === id) await this.look(id);
  }
}
