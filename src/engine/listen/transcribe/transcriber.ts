import { peakOf } from '../../base/statistics.ts';
import { HIGHEST_KEY, LOWEST_KEY } from '../../base/units.ts';
import { RATE_HZ, SampleHistory } from '../audio/index.ts';
import { ActiveLevel, createNetworkListener, NETWORK_DEFAULTS } from '../network/index.ts';
import type { NetworkListener, NetworkNote } from '../network/index.ts';
import { StringProbe } from '../partials/probe.ts';
import { ReleaseFinder } from '../partials/release.ts';
import { RoughTuning } from './rough-tuning.ts';
import { SecondOpinion } from './second-opinion.ts';
import type { FaintCandidate, OnsetCandidate } from './onset-candidate.ts';
import { stretchCents } from './stretch.ts';

export interface TranscriberOptions {
  /** sound is heard in pieces of this length */
  readonly pieceSec: number;
  /** the piano's tuning is believed after so much sounding; until then the sound is kept */
  readonly tuningSec: number;
  /** strikes less probable than this are faint: noted, but not looked at any closer */
  readonly leastProbability: number;
  /** the network's onsets stand so much early, seconds: measured on the development pianos */
  readonly earlySec: number;
  /** the piano's tuning against A4 = 440 Hz where it is known from before: then nothing is waited for; null: unknown */
  readonly knownCents: number | null;
}

/** the level's blocks on that grid too: 46 ms */
const LEVEL_HALF = 1024;
/** The network looks every 512 samples, the tuning every 8192: a sound moved by so many samples is heard alike. */
export const GRID = 3 * 8192;

export const EAR_DEFAULTS: TranscriberOptions = {
  pieceSec: GRID / RATE_HZ,
  tuningSec: 4,
  leastProbability: 0.2,
  earlySec: 0.0008,
  knownCents: null,
};

/** seconds of sound that are kept; at least tuningSec of sounding, pauses between, and a release's length */
const HISTORY_SEC = 22;
/** sound below this peak is silence, not worth a look: −90 dB */
const SILENCE = 3e-5;
/** Pieces overlap by this on each side: heard with another gain, a note at the seam may move across it. */
const SEAM_SEC = 0.02;
/** level is taken from so far back, seconds */
const GAIN_BACK_SEC = 4;
/** and around a moment that is looked at again, so far on both sides, seconds: as in the training of the closer look */
const GAIN_AROUND_SEC = 2;
/** the network forgives this much: within it a piece is heard as the one before */
const SAME_CENTS = 5;
const SAME_GAIN_DB = 3;
/** a tuning read further than this from the one known says that the piano was tuned, or is another */
const OTHER_CENTS = 12;
/** believed enough to count among what was struck, for releases and for the ends of the keyboard */
const LIKELY = 0.5;
/** The network knows these keys. The few beyond them it hears by listening again, transposed: its ear is alike at every key. */
const LOWEST_KNOWN = 24;
const HIGHEST_KNOWN = 103;
const ABOVE = HIGHEST_KEY - HIGHEST_KNOWN;
const BELOW = LOWEST_KEY - LOWEST_KNOWN;
/** it does so when playing has come this near to its edge, semitones */
const NEAR_EDGE = 7;
/** the string is looked at once so much has been heard after it */
const PROBE_SEC = 0.2;
/** a surer strike needs no second opinion */
const SURE = 0.8;
/** a release is looked for up to so long after an onset, and after the next one, seconds */
const LONGEST_HELD_SEC = 2.5;
const AFTER_NEXT_SEC = 0.35;
/** strikes closer than this are one chord, seconds */
const ONE_CHORD_SEC = 0.1;
/** later strikes that may hide a release */
const FOLLOWERS = 12;

/** The network tells all but what it is sure was not struck. */
const FAINTEST = { leastProbability: 0.005, leastPeak: 0.005 };

/** What the network is told of a piece. */
interface Hearing {
  readonly cents: number;
  readonly gain: number;
}

const UNHEARD: Hearing = { cents: 0, gain: 0 };

/** Samples at RATE_HZ → strikes, as a stream. What is found depends on the sound alone, not on how it was cut. */
export class Transcriber {
  readonly history = new SampleHistory(HISTORY_SEC * RATE_HZ);
  readonly #options: TranscriberOptions;
  readonly #level = new ActiveLevel(RATE_HZ, LEVEL_HALF);
  readonly #tuning: RoughTuning;
  readonly #network = createNetworkListener(FAINTEST);
  readonly #probe = new StringProbe(this.history);
  readonly #second = new SecondOpinion(this.history);
  readonly #releases = new ReleaseFinder(this.history);
  readonly #strikes: OnsetCandidate[] = [];
  readonly #faint: FaintCandidate[] = [];
  readonly #peaks: number[] = [];
  readonly #pieceSamples: number;
  readonly #aheadSamples: number;
  #peak = 0;
  #heardPieces = 0;
  #firstBlow = 0;
  /** made when playing first comes near an end of the network's keyboard */
  #transposed: NetworkListener | null = null;
  /** likely keys of the piece before */
  #lately: readonly number[] = [];
  /** what the pieces before were heard with: neighbours heard alike share work */
  #heardWith: Hearing = UNHEARD;
  /** first strike whose release has not been looked for */
  #unreleased = 0;
  /** length of the whole sound, samples, once it is known */
  #endSample = Infinity;

  constructor(options: Partial<TranscriberOptions> = {}) {
    this.#options = { ...EAR_DEFAULTS, ...options };
    this.#tuning = new RoughTuning(this.history, this.#options.knownCents);
    this.#pieceSamples = Math.round(this.#options.pieceSec * RATE_HZ);
    this.#aheadSamples = Math.ceil((SEAM_SEC + Math.max(this.#network.lookAheadSec, PROBE_SEC)) * RATE_HZ);
  }

  /** everything that may have been a note, in order of time */
  get strikes(): readonly OnsetCandidate[] {
    return this.#strikes;
  }

  /** What brings the playing around a moment to the level that the network was trained on. */
  gainAt(timeSec: number): number {
    return this.#level.gain(timeSec - GAIN_AROUND_SEC, timeSec + GAIN_AROUND_SEC);
  }

  /** what was most probably no note, in order of time */
  get faint(): readonly FaintCandidate[] {
    return this.#faint;
  }

  /** The first blow falls here: how the room was heard before says nothing of how to hear the playing. */
  beginsAt(sample: number): void {
    this.#firstBlow = sample;
  }

  /** Takes the first `length` samples of a block. */
  push(block: Float64Array, length = block.length): void {
    for (let from = 0; from < length;) {
      const left = this.#pieceSamples - (this.history.end % this.#pieceSamples);
      const to = Math.min(length, from + left);
      this.history.append(block, from, to);
      this.#level.push(block, from, to);
      this.#peak = Math.max(this.#peak, peakOf(block, from, to));
      if (to - from === left) this.#pieceCame();
      from = to;
    }
  }

  /** Hears out what is still open, as if silence followed. */
  finish(): void {
    // Up to two whole pieces: the last one ends within one, and is heard at the next seam after its look-ahead.
    const end = this.history.end;
    this.#endSample = end;
    this.push(new Float64Array(this.#aheadSamples + 2 * this.#pieceSamples));
    this.#findReleases(end);
  }

  #pieceCame(): void {
    this.#peaks.push(this.#peak);
    this.#peak = 0;
    this.#tuning.advance();
    const waited = this.history.end - this.#heardPieces * this.#pieceSamples;
    const full = waited > (HISTORY_SEC - 4) * RATE_HZ;
    const wait = this.#options.knownCents === null && this.#tuning.heardSec < this.#options.tuningSec;
    if (wait && this.#endSample === Infinity && !full) return;
    for (;;) {
      const end = (this.#heardPieces + 1) * this.#pieceSamples;
      if (end + this.#aheadSamples > this.history.end) return;
      this.#hearPiece(this.#heardPieces);
      this.#heardPieces += 1;
      this.#findReleases(null);
    }
  }

  /** A release is looked for when so much has been heard after a strike that it must have come, or at the sound's end. */
  #findReleases(lastSample: number | null): void {
    const heardTo = lastSample ?? this.#heardPieces * this.#pieceSamples;
    for (; this.#unreleased < this.#strikes.length; this.#unreleased++) {
      const strike = this.#strikes[this.#unreleased]!;
      const followers = this.#strikes
        .slice(this.#unreleased + 1, this.#unreleased + 1 + FOLLOWERS)
        .filter(({ probability }) => probability > LIKELY);
      const next = followers.find(
        ({ onsetSample }) => onsetSample > strike.onsetSample + ONE_CHORD_SEC * RATE_HZ,
      );
      const until = Math.min(
        strike.onsetSample + LONGEST_HELD_SEC * RATE_HZ,
        (next?.onsetSample ?? Infinity) + AFTER_NEXT_SEC * RATE_HZ,
      );
      if (lastSample === null && until > heardTo) return;
      if (strike.probability <= LIKELY) continue;
      const hidden = followers.filter(({ onsetSample }) => onsetSample < until);
      strike.releaseSample = this.#releases.find(strike, hidden, Math.min(until, heardTo));
    }
  }

  #hearPiece(piece: number): void {
    if (Math.max(this.#peaks[piece - 1] ?? 0, this.#peaks[piece]!, this.#peaks[piece + 1] ?? 0) < SILENCE)
      return;
    const fromSec = piece * this.#options.pieceSec;
    const endSec = this.#endSample / RATE_HZ;
    if (fromSec >= endSec) return;
    const toSec = Math.min(fromSec + this.#options.pieceSec, endSec);
    const hearing = this.#howToHear(fromSec, toSec);
    const task = {
      source: this.history,
      ...hearing,
      lowMidi: LOWEST_KNOWN,
      highMidi: HIGHEST_KNOWN,
      spans: [{ fromSec: Math.max(0, fromSec - SEAM_SEC), toSec: toSec + SEAM_SEC }],
    };
    const heard = this.#network.hear(task);
    const likely = heard.filter(({ probability }) => probability > LIKELY).map(({ midi }) => midi);
    const near = [...likely, ...this.#lately];
    this.#lately = likely;
    const beyond = [
      ...(Math.max(...near) >= HIGHEST_KNOWN - NEAR_EDGE ? [ABOVE] : []),
      ...(Math.min(...near) <= LOWEST_KNOWN + NEAR_EDGE ? [BELOW] : []),
    ];
    const notes = [
      ...heard,
      ...beyond.flatMap((semitones) =>
        (this.#transposed ??= createNetworkListener(FAINTEST))
          // All its keys listen: a ghost is known by the note below it.
          .hear({ ...task, cents: hearing.cents + 100 * semitones })
          .map((note) => ({ ...note, midi: note.midi + semitones }))
          .filter(({ midi }) => midi < LOWEST_KNOWN || midi > HIGHEST_KNOWN),
      ),
    ]
      .filter((note) => !this.#isEcho(note))
      .sort((a, b) => a.timeSec - b.timeSec || a.midi - b.midi);
    const { leastProbability } = this.#options;
    notes
      .filter(({ probability }) => probability < leastProbability)
      .forEach((note) => this.#faint.push(this.#told(note)));
    const likelier = notes.filter(({ probability }) => probability >= leastProbability);
    likelier.forEach((note, i) => this.#strike(note, likelier[i + 1], hearing.cents));
  }

  #told({ timeSec, midi, probability, levelDb, sounding }: NetworkNote): FaintCandidate {
    const onsetSample = Math.round((timeSec + this.#options.earlySec) * RATE_HZ);
    return { onsetSample, midi, probability, loudness: levelDb, sounding };
  }

  /** The end of the piece before may have told the same strike already. */
  #isEcho({ timeSec, midi }: NetworkNote): boolean {
    const since = (timeSec - NETWORK_DEFAULTS.refractorySec) * RATE_HZ;
    for (let i = this.#strikes.length - 1; i >= 0 && this.#strikes[i]!.onsetSample > since; i--)
      if (this.#strikes[i]!.midi === midi) return true;
    return false;
  }

  /** Tuning and gain for a piece: as before, unless what has been heard since calls for others. */
  #howToHear(fromSec: number, toSec: number): Hearing {
    const first = this.#firstBlow / RATE_HZ >= fromSec && this.#firstBlow / RATE_HZ < toSec;
    const before = first ? UNHEARD : this.#heardWith;
    const cents = this.#tuningCents();
    const gain = this.#level.gain(fromSec - GAIN_BACK_SEC, toSec + this.#aheadSamples / RATE_HZ);
    this.#heardWith = {
      cents: Math.abs(cents - before.cents) <= SAME_CENTS ? before.cents : cents,
      gain: Math.abs(20 * Math.log10(gain / before.gain)) <= SAME_GAIN_DB ? before.gain : gain,
    };
    return this.#heardWith;
  }

  /** What is known holds until enough has been heard, and beyond unless that says otherwise. */
  #tuningCents(): number {
    const { knownCents, tuningSec } = this.#options;
    const own = this.#tuning.cents();
    if (knownCents === null) return own;
    const holds = this.#tuning.heardSec < tuningSec || Math.abs(own - knownCents) <= OTHER_CENTS;
    return holds ? knownCents : own;
  }

  #strike(note: NetworkNote, next: NetworkNote | undefined, cents: number): void {
    const told = this.#told(note);
    const { onsetSample } = told;
    const nextSample = next === undefined ? Infinity : Math.round(next.timeSec * RATE_HZ);
    const apart = nextSample - onsetSample > 0.04 * RATE_HZ ? nextSample : Infinity;
    const expected = note.midi + (cents + stretchCents(note.midi)) / 100;
    const seen = this.#probe.look(onsetSample, apart, expected);
    this.#strikes.push({
      ...told,
      levelDb: seen.levelDb,
      pitch: seen.pitch ?? expected,
      pitchRead: seen.pitch !== null,
      stiffness: seen.stiffness,
      flatness: this.#second.flatness(onsetSample),
      agreement: note.probability < SURE ? this.#second.agreement(onsetSample, expected) : null,
      releaseSample: null,
    });
  }
}
