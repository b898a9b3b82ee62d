import { median } from '../base/statistics.ts';
import { RATE_HZ } from '../listen/audio/index.ts';
import type { SampleHistory } from '../listen/audio/index.ts';
import type { NetworkNote } from '../listen/network/index.ts';
import { StringProbe } from '../listen/partials/probe.ts';
import { offsetCents } from '../listen/transcribe/string-tuning.ts';
import { stretchCents } from '../listen/transcribe/stretch.ts';

/** so many strings give a reading for this playing, and so many one that is kept for the next */
const FIRST_STRINGS = 4;
const SURE_STRINGS = 8;
/** readings that scatter further than this (median distance) are no piano's, cents */
const MOST_SCATTER = 9;
/** strings that count at most: the latest */
const MOST_STRINGS = 40;
/** a reading so far off says that the piano was tuned, or is another, cents */
const OTHER_CENTS = 12;
/** so many strings of one playing that agree speak against what was known */
const AGREEING = 2;
/** there they are read best */
const MIDDLE = { from: 36, to: 88 } as const;
/** a note struck so soon after is in the way of reading, seconds */
const APART_SEC = 0.04;

/**
 * The piano's tuning while somebody plays: what is known, until its strings say otherwise. And the other way round: what lies
 * beside the tuning is none of its strings.
 */
export class LiveTuning {
  readonly #history: SampleHistory;
  readonly #probe: StringProbe;
  #known: number | null;
  #strings: readonly { readonly cents: number; readonly isVoiced: boolean }[] = [];

  constructor(history: SampleHistory, knownCents: number | null) {
    this.#history = history;
    this.#probe = new StringProbe(history);
    this.#known = knownCents;
  }

  know(cents: number): void {
    this.#known = cents;
  }

  /** 0 where nothing is known: the network forgives some 30 cents. */
  cents(): number {
    const read = this.#reading(FIRST_STRINGS);
    if (this.#known === null) return read ?? 0;
    return read !== null && Math.abs(read - this.#known) > OTHER_CENTS ? read : this.#known;
  }

  /**
   * A note's string is read: how far it lies from where this piano's strings lie, cents; 'first' where it is the first string of an
   * unknown piano; null where it cannot be read. `isVoiced`: somebody may be talking, and the string be none.
   */
  offsetOf(note: NetworkNote, next: NetworkNote | undefined, isVoiced: boolean): number | 'first' | null {
    if (note.midi < MIDDLE.from || note.midi > MIDDLE.to) return null;
    const onset = Math.round(note.timeSec * RATE_HZ);
    const apart = next !== undefined && next.timeSec - note.timeSec > APART_SEC;
    const nextSample = apart ? Math.round(next.timeSec * RATE_HZ) : this.#history.end;
    const expected = note.midi + (this.cents() + stretchCents(note.midi)) / 100;
    const { pitch } = this.#probe.look(onset, nextSample, expected);
    if (pitch === null) return null;
    const cents = offsetCents({ pitch, midi: note.midi });
    const apartCents = this.#strings.map((other) => Math.abs(other.cents - cents)).sort((x, y) => x - y);
    this.#strings = [...this.#strings, { cents, isVoiced }].slice(-MOST_STRINGS);
    // Two strings that agree say as much as what was known: this may be another piano.
    const agree = apartCents[AGREEING - 1] ?? Infinity;
    if (this.#known !== null) return Math.min(agree, Math.abs(cents - this.#known));
    return apartCents.length === 0 ? 'first' : apartCents[0]!;
  }

  /** Nobody plays any more: what many strings said is kept, the rest forgotten. */
  stopped(): void {
    this.#known = this.#reading(SURE_STRINGS) ?? this.#known;
    this.#strings = [];
  }

  /** Of a voice a few syllables agree by chance, and the piano is then not heard at all: beside one it takes many. */
  #reading(least: number): number | null {
    const quiet = this.#strings.filter(({ isVoiced }) => !isVoiced);
    if (quiet.length >= least) return agreed(quiet);
    return this.#strings.length < SURE_STRINGS ? null : agreed(this.#strings);
  }
}

function agreed(strings: readonly { readonly cents: number }[]): number | null {
  const middle = median(strings.map(({ cents }) => cents))!;
  const scatter = median(strings.map(({ cents }) => Math.abs(cents - middle)))!;
  return scatter <= MOST_SCATTER ? middle : null;
}
