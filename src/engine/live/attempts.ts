import type { LiveEvent } from './types.ts';

/** so many sure notes make an attempt: one or two may be a key dusted, or a word */
const LEAST_SURE = 3;
/** a note in reach of the playing: within an octave of one in so many seconds before it */
const NEAR = { semitones: 12, sec: 3 } as const;

/** notes so near are one moment, seconds */
const MOMENT_SEC = 0.05;
/** a stop before the playing: longer than this, and than so many times the longest wait from moment to moment after it */
const STOP = { sec: 1, times: 2 } as const;

export interface AttemptOptions {
  readonly silenceSec: number;
  readonly beforeSec: number;
}

/** sure: a string of this piano; likely: a string, perhaps of this piano; doubtful: heard, but a syllable may sound so */
export type Certainty = 'sure' | 'likely' | 'doubtful';

interface Struck {
  readonly timeSec: number;
  readonly midi: number;
}
type Noted = Struck & { readonly certainty: Certainty };

/**
 * Notes and the passing of time → attempts begun and ended. Only sure notes begin one, since talk and clatter sound like a note
 * now and then; likely ones keep it going, and are part of its beginning; what was heard shortly before belongs to its sound, however
 * doubtful.
 */
export class AttemptWatch {
  readonly #options: AttemptOptions;
  #notes: readonly Noted[] = [];
  #startSec: number | null = null;
  #cutSec = 0;
  #lastSec = -Infinity;
  /** where the attempt before ended: no sound belongs to two */
  #lastEndSec = 0;

  constructor(options: AttemptOptions) {
    this.#options = options;
  }

  /** something that may be an attempt has sounded within the last silence */
  get playing(): boolean {
    return this.#notes.length > 0;
  }

  get started(): boolean {
    return this.#startSec !== null;
  }

  /** Within an octave of something that has just been played. */
  isNear({ timeSec, midi }: Struck): boolean {
    return this.#notes.some(
      (note) =>
        note.certainty !== 'doubtful' &&
        Math.abs(note.midi - midi) <= NEAR.semitones &&
        timeSec - note.timeSec < NEAR.sec,
    );
  }

  note({ timeSec, midi }: Struck, certainty: Certainty): LiveEvent[] {
    this.#notes = [...this.#notes, { timeSec, midi, certainty }];
    if (certainty !== 'doubtful') this.#lastSec = Math.max(this.#lastSec, timeSec);
    const sure = this.#notes.filter((note) => note.certainty === 'sure');
    if (this.#startSec !== null || sure.length < LEAST_SURE) return [];
    this.#startSec = beginningOf(this.#notes.filter((note) => note.certainty !== 'doubtful'));
    const first = Math.min(...this.#notes.map((note) => note.timeSec));
    this.#cutSec = Math.max(this.#lastEndSec, first - this.#options.beforeSec);
    return [{ kind: 'started', timeSec: this.#startSec, cutSec: this.#cutSec }];
  }

  /** All notes before `certainSec` are known; `nowSec` has been heard. */
  pass(certainSec: number, nowSec: number): LiveEvent[] {
    const { silenceSec } = this.#options;
    if (this.#startSec === null) {
      this.#notes = this.#notes.filter(({ timeSec }) => timeSec > certainSec - silenceSec);
      return [];
    }
    if (certainSec < this.#lastSec + silenceSec) return [];
    const notes = this.#notes.filter(({ certainty }) => certainty !== 'doubtful').length;
    const ended: LiveEvent = { kind: 'ended', startSec: this.#cutSec, endSec: nowSec, notes };
    this.#lastEndSec = nowSec;
    this.#startSec = null;
    this.#notes = [];
    return [ended];
  }
}

/** Notes, three of them surely struck → the first from which on the playing went on; what stands alone before may be a word. */
function beginningOf(notes: readonly Struck[]): number {
  const times = notes.map(({ timeSec }) => timeSec).sort((a, b) => b - a);
  let first = times[0]!;
  let longest = 0;
  for (const time of times) {
    const wait = first - time;
    if (longest > 0 && wait > Math.max(STOP.sec, STOP.times * longest)) return first;
    if (wait > MOMENT_SEC) longest = Math.max(longest, wait);
    first = time;
  }
  return first;
}
