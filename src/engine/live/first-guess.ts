import { RATE_HZ } from '../listen/audio/index.ts';
import type { SampleHistory } from '../listen/audio/index.ts';
import { createNetworkListener } from '../listen/network/index.ts';
import type { NetworkNote } from '../listen/network/index.ts';
import { carriedOn } from './carried-on.ts';
import { RiseWatch } from './rises.ts';

/**
 * The network is asked so long after a rise was seen, seconds; again, for what was too soft or came a little later. Asked 10 ms
 * sooner it guesses 5 ms sooner and wrongly half as often again; not asked after 100 ms it misses the lower notes of chords.
 */
const ASK_AFTER_SEC = [0.04, 0.065, 0.1] as const;
/** while somebody plays it is asked so often at least, seconds: a soft note in a legato may not rise at all */
const ASK_EVERY_SEC = 0.055;
/** two rises so close share their questions */
const ONE_QUESTION_SEC = 0.008;
/** what may have been struck lies between these before a question */
const SPAN_SEC = { from: 0.13, to: 0.02 } as const;
const LOWEST_KNOWN = 24;
const HIGHEST_KNOWN = 103;
/** all that the judge may still believe in */
const LEAST_PROBABILITY = 0.1;

/** How the network is to hear. */
export interface Hearing {
  readonly cents: number;
  readonly gain: number;
}

/** A first guess at what was struck, some 50 ms after the hammer: the network over the sound so far, carried on. */
export class FirstGuess {
  readonly #history: SampleHistory;
  readonly #rises: RiseWatch;
  readonly #network = createNetworkListener({
    leastProbability: LEAST_PROBABILITY,
    leastPeak: LEAST_PROBABILITY,
  });
  /** when to ask, samples, in order */
  #questions: number[] = [];
  #askedAt = 0;

  constructor(history: SampleHistory) {
    this.#history = history;
    this.#rises = new RiseWatch(history);
  }

  /** To be called whenever the history has grown. `howToHear`: at this sample; `playing`: something has been struck lately. */
  advance(howToHear: (nowSample: number) => Hearing, playing: boolean): NetworkNote[] {
    for (const rise of this.#rises.advance()) this.#questions.push(...this.#questionsFor(rise));
    const now = this.#history.end;
    if (playing && now - this.#askedAt >= ASK_EVERY_SEC * RATE_HZ) this.#questions.push(now);
    this.#questions.sort((a, b) => a - b);
    const notes: NetworkNote[] = [];
    while (this.#questions.length > 0 && this.#questions[0]! <= now)
      notes.push(...this.#ask(this.#questions.shift()!, howToHear));
    return notes;
  }

  #questionsFor(rise: number): number[] {
    return ASK_AFTER_SEC.map((sec) => rise + Math.round(sec * RATE_HZ)).filter(
      (at) => !this.#questions.some((other) => Math.abs(other - at) < ONE_QUESTION_SEC * RATE_HZ),
    );
  }

  #ask(nowSample: number, howToHear: (nowSample: number) => Hearing): readonly NetworkNote[] {
    const nowSec = nowSample / RATE_HZ;
    this.#askedAt = nowSample;
    return this.#network.hear({
      source: carriedOn(this.#history, nowSample),
      ...howToHear(nowSample),
      lowMidi: LOWEST_KNOWN,
      highMidi: HIGHEST_KNOWN,
      spans: [{ fromSec: Math.max(0, nowSec - SPAN_SEC.from), toSec: nowSec - SPAN_SEC.to }],
    });
  }
}
