import type { NetworkNote } from '../listen/network/index.ts';
import { isOneMoment } from './pairs.ts';
import type { LiveEvent } from './types.ts';

/** a guess and a certain note of one key so close are one, seconds */
const SAME_SEC = 0.09;
/** A certain note takes over a guess at another key in its moment: that is its correction. But not so near to the end of what has been heard, seconds, where that key may be certain with the next piece. */
const SEAM_SEC = 0.02;
/** a key guessed or heard within this is not guessed again, seconds */
const AGAIN_SEC = 0.09;

interface Guess {
  readonly id: number;
  readonly timeSec: number;
  readonly midi: number;
}

type Heard = Pick<NetworkNote, 'timeSec' | 'midi' | 'levelDb'>;

/** Guesses and certain notes → what was struck, each told once or twice: the ids are given here. */
export class Ledger {
  #guesses: readonly Guess[] = [];
  /** certain, or left open */
  #heard: readonly { readonly midi: number; readonly timeSec: number }[] = [];
  #nextId = 0;

  /** The first guess that is neither certain yet nor withdrawn, of those after a moment; null: there is none. */
  guessAfter(sec: number): number | null {
    const later = this.#guesses.filter(({ timeSec }) => timeSec > sec).map(({ timeSec }) => timeSec);
    return later.length === 0 ? null : Math.min(...later);
  }

  /** Something has been guessed that was struck at that moment, and is not certain yet: what goes with it is a chord. */
  hasGuessAt(timeSec: number): boolean {
    return this.#guesses.some((guess) => isOneMoment(guess, { timeSec }));
  }

  guess(notes: readonly Heard[]): LiveEvent[] {
    return notes.flatMap(({ midi, timeSec, levelDb }) => {
      const known = [...this.#guesses, ...this.#heard].some(
        (other) => other.midi === midi && Math.abs(other.timeSec - timeSec) < AGAIN_SEC,
      );
      if (known) return [];
      const id = this.#nextId++;
      this.#guesses = [...this.#guesses, { id, midi, timeSec }];
      return [{ kind: 'struck', id, timeSec, midi, levelDb, final: false }];
    });
  }

  /** Notes that are certain, and such as stay open: all that were struck before `certainSec` among those told so far. */
  settle(certain: readonly Heard[], open: readonly Heard[], certainSec: number): LiveEvent[] {
    const sameKey = certain.map((note) => this.#takeAt(note));
    // What is open stays the guess that it was; what was not guessed yet becomes one.
    const unguessed = open.filter((note) => this.#takeAt(note) === undefined);
    const late = this.guess(unguessed);
    for (const note of unguessed) this.#takeAt(note);
    const struck = certain.map(({ midi, timeSec, levelDb }, i): LiveEvent => {
      const corrected = (guess: Guess): boolean =>
        isOneMoment(guess, { timeSec }) && guess.timeSec < certainSec - SEAM_SEC;
      const id = (sameKey[i] ?? this.#take(corrected))?.id ?? this.#nextId++;
      return { kind: 'struck', id, timeSec, midi, levelDb, final: true };
    });
    this.#heard = [...this.#heard, ...certain, ...open].filter(({ timeSec }) => timeSec > certainSec - 1);
    const over = this.#guesses.filter(({ timeSec }) => timeSec < certainSec - SAME_SEC);
    this.#guesses = this.#guesses.filter((guess) => !over.includes(guess));
    return [...struck, ...late, ...over.map(({ id }): LiveEvent => ({ kind: 'withdrawn', id }))];
  }

  #takeAt(note: Heard): Guess | undefined {
    return this.#take(
      ({ midi, timeSec }) => midi === note.midi && Math.abs(timeSec - note.timeSec) < SAME_SEC,
    );
  }

  #take(fits: (guess: Guess) => boolean): Guess | undefined {
    const found = this.#guesses.find(fits);
    this.#guesses = this.#guesses.filter((guess) => guess !== found);
    return found;
  }
}
