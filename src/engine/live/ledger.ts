import type { NetworkNote } from '../listen/network/index.ts';
import type { LiveEvent } from './types.ts';

/** a guess and a certain note of one key so close are one, seconds */
const SAME_SEC = 0.09;
/** a certain note takes over a guess at another key so close, seconds: that is its correction */
const CORRECTS_SEC = 0.05;
/** a key guessed or heard within this is not guessed again, seconds */
const AGAIN_SEC = 0.09;

interface Guess {
  readonly id: number;
  readonly timeSec: number;
  readonly midi: number;
}

/** Guesses and certain notes → what was struck, each told once or twice: the ids are given here. */
export class Ledger {
  #guesses: readonly Guess[] = [];
  #certain: readonly { readonly midi: number; readonly timeSec: number }[] = [];
  #nextId = 0;

  /** The first guess that is neither certain yet nor withdrawn, of those after a moment; null: there is none. */
  guessAfter(sec: number): number | null {
    const later = this.#guesses.filter(({ timeSec }) => timeSec > sec).map(({ timeSec }) => timeSec);
    return later.length === 0 ? null : Math.min(...later);
  }

  guess(notes: readonly NetworkNote[]): LiveEvent[] {
    return notes.flatMap(({ midi, timeSec, levelDb }) => {
      const known = [...this.#guesses, ...this.#certain].some(
        (other) => other.midi === midi && Math.abs(other.timeSec - timeSec) < AGAIN_SEC,
      );
      if (known) return [];
      const id = this.#nextId++;
      this.#guesses = [...this.#guesses, { id, midi, timeSec }];
      return [{ kind: 'struck', id, timeSec, midi, levelDb, final: false }];
    });
  }

  /** Notes that are certain, all that were struck before `certainSec` among those told so far. */
  certain(notes: readonly NetworkNote[], certainSec: number): LiveEvent[] {
    const sameKey = notes.map((note) =>
      this.#take(({ midi, timeSec }) => midi === note.midi && Math.abs(timeSec - note.timeSec) < SAME_SEC),
    );
    const struck = notes.map(({ midi, timeSec, levelDb }, i): LiveEvent => {
      const guessed = sameKey[i] ?? this.#take((guess) => Math.abs(guess.timeSec - timeSec) < CORRECTS_SEC);
      return { kind: 'struck', id: guessed?.id ?? this.#nextId++, timeSec, midi, levelDb, final: true };
    });
    this.#certain = [...this.#certain, ...notes].filter(({ timeSec }) => timeSec > certainSec - 1);
    const over = this.#guesses.filter(({ timeSec }) => timeSec < certainSec - SAME_SEC);
    this.#guesses = this.#guesses.filter((guess) => !over.includes(guess));
    return [...struck, ...over.map(({ id }): LiveEvent => ({ kind: 'withdrawn', id }))];
  }

  #take(fits: (guess: Guess) => boolean): Guess | undefined {
    const found = this.#guesses.find(fits);
    this.#guesses = this.#guesses.filter((guess) => guess !== found);
    return found;
  }
}
