import { RATE_HZ } from '../listen/audio/index.ts';
import type { NetworkNote } from '../listen/network/index.ts';
import { chanceAmong } from '../listen/transcribe/settle.ts';
import type { Judged } from '../listen/transcribe/settle.ts';
import { Pairs } from './pairs.ts';

/** a note is judged by those of so many seconds before it, and of its own moment */
const AROUND_SEC = 3;
/**
 * Drawn early when it is likelier than this, and certain when than this (our bench, development piano, hands alone and together: a
 * higher bound loses notes, a lower one lets ghosts of chords in).
 */
const LEAST_CHANCE = { guess: 0.75, certain: 0.35 } as const;

/** What was heard early on, and how likely it was struck. */
export interface Guess {
  readonly note: NetworkNote;
  readonly chance: number;
}

/** What was heard again with what followed: certain; or open, since it may be another key's partial as well. */
export interface Settled {
  readonly certain: readonly NetworkNote[];
  readonly open: readonly NetworkNote[];
}

/**
 * What the network believes → what is told, each note judged among those before it and with it, as `settle` does with a whole
 * recording. What comes after is not waited for.
 */
export class Judge {
  readonly #pairs = new Pairs();
  #before: readonly Judged[] = [];

  /** Those of `notes` that are to be drawn before they are certain. */
  guess(notes: readonly NetworkNote[]): Guess[] {
    const { likely, others } = this.#part(notes, LEAST_CHANCE.guess);
    return [...likely, ...others];
  }

  /** What becomes of all that was heard in a stretch; from now on it is what later notes are judged by. */
  settle(notes: readonly NetworkNote[]): Settled {
    const { likely, others } = this.#part(notes, LEAST_CHANCE.certain);
    const certain = likely.map(({ note }) => note);
    const open = others.map(({ note }) => note);
    if (notes.length > 0) {
      const since = (notes[0]!.timeSec - AROUND_SEC) * RATE_HZ;
      this.#before = [...this.#before, ...certain.map(judgedOf)].filter((one) => one.onsetSample > since);
    }
    return { certain, open };
  }

  /** Of what was settled, in order of time, what is surely somebody's playing: by that it is known whether both hands play. */
  played(notes: readonly NetworkNote[]): void {
    this.#pairs.played(notes);
  }

  /** What is likely by itself, and what is where both hands play. */
  #part(notes: readonly NetworkNote[], leastChance: number) {
    const weighed = this.#weigh(notes);
    const likely = weighed.filter(({ chance }) => chance > leastChance);
    const doubtful = weighed.filter((guess) => !likely.includes(guess));
    const others = this.#pairs.others(
      likely.map(({ note }) => note),
      doubtful.map(({ note }) => note),
    );
    return { likely, others: doubtful.filter(({ note }) => others.includes(note)) };
  }

  #weigh(notes: readonly NetworkNote[]): Guess[] {
    const moment = notes.map(judgedOf);
    const around = [...this.#before, ...moment];
    return notes.map((note, i) => ({ note, chance: chanceAmong(moment[i]!, around) }));
  }
}

function judgedOf({ timeSec, midi, probability, levelDb, sounding }: NetworkNote): Judged {
  const onsetSample = Math.round(timeSec * RATE_HZ);
  return { onsetSample, midi, probability, loudness: levelDb, sounding, flatness: 0, agreement: null };
}
