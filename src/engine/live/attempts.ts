import type { LiveEvent } from './types.ts';

/** so many certain notes make an attempt: one may be a key dusted */
const LEAST_NOTES = 2;

export interface AttemptOptions {
  readonly silenceSec: number;
  readonly beforeSec: number;
}

/** Certain notes, in order of time, and the passing of time → attempts begun and ended. */
export class AttemptWatch {
  readonly #options: AttemptOptions;
  #onsetsSec: number[] = [];
  #started = false;
  /** where the attempt before ended: no sound belongs to two */
  #lastEndSec = 0;

  constructor(options: AttemptOptions) {
    this.#options = options;
  }

  /** first onset of what is being played; null: nothing is */
  get sinceSec(): number | null {
    return this.#onsetsSec[0] ?? null;
  }

  /** A note became certain. */
  note(timeSec: number): LiveEvent[] {
    this.#onsetsSec.push(timeSec);
    if (this.#started || this.#onsetsSec.length < LEAST_NOTES) return [];
    this.#started = true;
    return [{ kind: 'started', timeSec: this.#firstSec, cutSec: this.#cutSec }];
  }

  /** All notes before `certainSec` are known; `nowSec` has been heard. */
  pass(certainSec: number, nowSec: number): LiveEvent[] {
    const lastSec = this.#onsetsSec.at(-1);
    if (lastSec === undefined || certainSec < lastSec + this.#options.silenceSec) return [];
    const events: LiveEvent[] = this.#started
      ? [{ kind: 'ended', startSec: this.#cutSec, endSec: nowSec, notes: this.#onsetsSec.length }]
      : [];
    if (this.#started) this.#lastEndSec = nowSec;
    this.#started = false;
    this.#onsetsSec = [];
    return events;
  }

  get #firstSec(): number {
    return Math.min(...this.#onsetsSec);
  }

  get #cutSec(): number {
    return Math.max(this.#lastEndSec, this.#firstSec - this.#options.beforeSec);
  }
}
