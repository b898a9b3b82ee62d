import { RATE_HZ } from '../listen/audio/index.ts';
import type { SampleHistory } from '../listen/audio/index.ts';
import { ActiveLevel, createNetworkListener, NETWORK_DEFAULTS } from '../listen/network/index.ts';
import type { NetworkNote } from '../listen/network/index.ts';
import { RoughTuning } from '../listen/transcribe/rough-tuning.ts';

/** sound is heard in pieces of this length, samples: 93 ms */
const PIECE = 2048;
const LOWEST_KNOWN = 24;
const HIGHEST_KNOWN = 103;
/** pieces overlap by so much: heard with another gain, a note at the seam may move across it */
const SEAM_SEC = 0.02;
const GAIN_BACK_SEC = 4;
const SAME_CENTS = 5;
const SAME_GAIN_DB = 3;
/** the tuning is believed after so much sounding */
const TUNING_SEC = 1;

/** The network beside the playing: hears each piece as soon as its look-ahead has come, some 0.4 s after a hammer. */
export class Hearing {
  readonly #history: SampleHistory;
  readonly #network = createNetworkListener({ leastProbability: 0.5 });
  readonly #level = new ActiveLevel(RATE_HZ);
  readonly #tuning: RoughTuning;
  readonly #ahead = Math.ceil((SEAM_SEC + this.#network.lookAheadSec) * RATE_HZ);
  #cents: number | null;
  #heardWith = { cents: 0, gain: 0 };
  #heardTo = 0;
  #recent: NetworkNote[] = [];

  constructor(history: SampleHistory, cents: number | null) {
    this.#history = history;
    this.#cents = cents;
    this.#tuning = new RoughTuning(history);
  }

  /** everything struck before this is known, seconds */
  get certainSec(): number {
    return this.#heardTo / RATE_HZ - SEAM_SEC;
  }

  useTuning(cents: number): void {
    this.#cents = cents;
  }

  /** Takes samples that have just been appended to the history; returns what was heard thereby, in order of time. */
  push(block: Float64Array, from: number, to: number): NetworkNote[] {
    this.#level.push(block, from, to);
    this.#tuning.advance();
    const notes: NetworkNote[] = [];
    while (this.#heardTo + PIECE + this.#ahead <= this.#history.end) {
      notes.push(...this.#hear(this.#heardTo / RATE_HZ, (this.#heardTo + PIECE) / RATE_HZ));
      this.#heardTo += PIECE;
    }
    return notes;
  }

  #hear(fromSec: number, toSec: number): NetworkNote[] {
    const heard = this.#network.hear({
      source: this.#history,
      ...this.#howToHear(fromSec, toSec),
      lowMidi: LOWEST_KNOWN,
      highMidi: HIGHEST_KNOWN,
      spans: [{ fromSec: Math.max(0, fromSec - SEAM_SEC), toSec: toSec + SEAM_SEC }],
    });
    const fresh = heard.filter(
      ({ midi, timeSec }) =>
        !this.#recent.some(
          (before) => before.midi === midi && timeSec - before.timeSec < NETWORK_DEFAULTS.refractorySec,
        ),
    );
    this.#recent = [...this.#recent.filter((note) => note.timeSec > fromSec - 1), ...fresh];
    return fresh;
  }

  #howToHear(fromSec: number, toSec: number): { readonly cents: number; readonly gain: number } {
    const before = this.#heardWith;
    const own = this.#tuning.heardSec >= TUNING_SEC ? this.#tuning.cents() : 0;
    const cents = this.#cents ?? own;
    const gain = this.#level.gain(fromSec - GAIN_BACK_SEC, toSec + this.#ahead / RATE_HZ);
    this.#heardWith = {
      cents: Math.abs(cents - before.cents) <= SAME_CENTS ? before.cents : cents,
      gain: Math.abs(20 * Math.log10(gain / before.gain)) <= SAME_GAIN_DB ? before.gain : gain,
    };
    return this.#heardWith;
  }
}
