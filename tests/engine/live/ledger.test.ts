import { beforeEach, describe, expect, it } from 'vitest';
import { Ledger } from '../../../src/engine/live/ledger.ts';
import type { LiveEvent } from '../../../src/engine/live/types.ts';

const at = (timeSec: number, midi: number) => ({ timeSec, midi, levelDb: 0 });
const told = (events: readonly LiveEvent[]): string[] =>
  events.map((event) => {
    if (event.kind !== 'struck') return `${'id' in event ? event.id : ''} ${event.kind}`;
    return `${event.id} ${event.midi} ${event.final ? 'certain' : 'guess'}`;
  });

describe('the ledger of guesses', () => {
  let ledger: Ledger;
  beforeEach(() => {
    ledger = new Ledger();
    ledger.guess([at(1, 60), at(1.01, 64)]);
  });

  it('makes each certain under its own id, whichever comes first', () => {
    expect(told(ledger.settle([at(1, 64), at(1.02, 60)], [], 1.2))).toEqual(['1 64 certain', '0 60 certain']);
  });

  it('lets a certain note at another key take over the guess beside it, and withdraws what nothing answers', () => {
    expect(told(ledger.settle([at(1.01, 67)], [], 1.2))).toEqual(['0 67 certain', '1 withdrawn']);
  });

  it('takes over no guess that the next piece may still make certain', () => {
    expect(told(ledger.settle([at(0.99, 67)], [], 1.005))).toEqual(['2 67 certain']);
    expect(told(ledger.settle([at(1, 60), at(1.01, 64)], [], 1.1))).toEqual(['0 60 certain', '1 64 certain']);
  });

  it('leaves open what stays a guess: nothing is told of it, it is never withdrawn, taken over or guessed again', () => {
    expect(told(ledger.settle([at(1, 60)], [at(1.01, 64)], 1.2))).toEqual(['0 60 certain']);
    expect(told(ledger.guess([at(1.02, 64)]))).toEqual([]);
    expect(told(ledger.settle([at(1.02, 65)], [], 1.4))).toEqual(['2 65 certain']);
  });

  it('guesses late what is open and had not been guessed, once', () => {
    expect(told(ledger.settle([], [at(1, 72)], 1.05))).toEqual(['2 72 guess']);
    expect(told(ledger.settle([at(1, 60), at(1.01, 64)], [], 1.5))).toEqual(['0 60 certain', '1 64 certain']);
  });

  it('knows of a guess at one moment until it is over', () => {
    expect([ledger.hasGuessAt(1.04), ledger.hasGuessAt(1.07)]).toEqual([true, false]);
    ledger.settle([], [], 1.2);
    expect(ledger.hasGuessAt(1.04)).toBe(false);
  });
});
