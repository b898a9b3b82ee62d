import { RATE_HZ } from '../listen/audio/index.ts';
import type { SampleHistory } from '../listen/audio/index.ts';
import { createNetworkListener, NETWORK_DEFAULTS } from '../listen/network/index.ts';
import type { NetworkNote } from '../listen/network/index.ts';
import type { Hearing } from './first-guess.ts';
import type { Loudness } from './loudness.ts';

/** sound is heard in pieces of this length, samples: 93 ms */
const PIECE = 2048;
const LOWEST_KNOWN = 24;
const HIGHEST_KNOWN = 103;
/** pieces overlap by so much: heard with another gain, a note at the seam may move across it */
const SEAM_SEC = 0.02;
/** the network forgives this much: within it a piece is heard as the one before, and shares its work */
const SAME_CENTS = 5;
const SAME_GAIN_DB = 3;
/** all that the judge may still believe in */
const LEAST_PROBABILITY = 0.1;

/** The network over the sound as it was: hears each piece once its look-ahead has come, 0.37 to 0.46 s after a hammer. */
export class SecondHearing {
  readonly #history: SampleHistory;
  readonly #loudness: Loudness;
  readonly #network = createNetworkListener({
    leastProbability: LEAST_PROBABILITY,
    leastPeak: LEAST_PROBABILITY,
  });
  readonly #ahead = Math.ceil((SEAM_SEC + this.#network.lookAheadSec) * RATE_HZ);
  #heardWith: Hearing = { cents: 0, gain: 1 };
  #heardTo = 0;
  #recent: readonly NetworkNote[] = [];

  constructor(history: SampleHistory, loudness: Loudness) {
    this.#history = history;
    this.#loudness = loudness;
  }

  /** everything struck before this is known, seconds */
  get certainSec(): number {
    return Math.max(0, this.#heardTo / RATE_HZ - SEAM_SEC);
  }

  /** To be called whenever the history has grown; returns what was heard thereby, in order of time. */
  advance(cents: number): NetworkNote[] {
    const notes: NetworkNote[] = [];
    while (this.#heardTo + PIECE + this.#ahead <= this.#history.end) {
      notes.push(...this.#hear(this.#heardTo / RATE_HZ, (this.#heardTo + PIECE) / RATE_HZ, cents));
      this.#heardTo += PIECE;
    }
    return notes;
  }

  #hear(fromSec: number, toSec: number, cents: number): readonly NetworkNote[] {
    const hearing = this.#howToHear(fromSec, toSec, cents);
    const heard = this.#network.hear({
      source: this.#history,
      ...hearing,
      lowMidi: LOWEST_KNOWN,
      highMidi: HIGHEST_KNOWN,
      spans: [{ fromSec: Math.max(0, fromSec - SEAM_SEC), toSec: toSec + SEAM_SEC }],
    });
    // The piece before may have told the same note already.
    const fresh = heard.filter((note) => !this.#recent.some((before) => isEcho(note, before)));
    this.#recent = [...this.#recent.filter(({ timeSec }) => timeSec > fromSec - 1), ...fresh];
    if (fresh.length > 0) this.#loudness.heardPlaying(hearing.gain);
    return fresh;
  }

  #howToHear(fromSec: number, toSec: number, cents: number): Hearing {
    const before = this.#heardWith;
    const gain = this.#loudness.gainOf(fromSec, toSec + this.#ahead / RATE_HZ);
    this.#heardWith = {
      cents: Math.abs(cents - before.cents) <= SAME_CENTS ? before.cents : cents,
      gain: Math.abs(20 * Math.log10(gain / before.gain)) <= SAME_GAIN_DB ? before.gain : gain,
    };
    return this.#heardWith;
  }
}

/** What was hardly believed in hides nothing that is struck after it. */
function isEcho(note: NetworkNote, before: NetworkNote): boolean {
  const isNear = note.timeSec - before.timeSec < NETWORK_DEFAULTS.refractorySec;
  return note.midi === before.midi && isNear && before.probability > note.probability / 2;
}
