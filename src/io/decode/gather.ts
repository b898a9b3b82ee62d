import { DecodeError } from './errors.ts';
import type { Container, DecodedAudio, DecodeLimits } from './types.ts';

/** Sample rates that a sound file can sensibly have: telephone to studio, Hz. */
const LOWEST_RATE_HZ = 4_000;
const HIGHEST_RATE_HZ = 768_000;

/**
 * Collects decoded blocks into whole channels, within the limits. `push` says whether more is wanted, so that a decoder
 * of a long file can stop early. Values that are no numbers (a damaged floating-point file) become silence.
 */
export class SoundGatherer {
  readonly #limits: DecodeLimits;
  readonly #blocks: Float32Array[][] = [];
  readonly #remarks: string[] = [];
  #sampleRateHz = 0;
  #sourceChannels = 0;
  #frames = 0;
  #full = false;

  constructor(limits: DecodeLimits) {
    this.#limits = limits;
  }

  /** samples a channel so far */
  get frames(): number {
    return this.#frames;
  }

  remark(sentence: string): void {
    if (!this.#remarks.includes(sentence)) this.#remarks.push(sentence);
  }

  /** Takes a block, one array a channel; true: go on, false: enough. */
  push(block: readonly Float32Array[], sampleRateHz: number): boolean {
    const frames = block[0]?.length ?? 0;
    if (this.#full || frames === 0) return !this.#full;
    if (this.#blocks.length === 0) {
      this.#sampleRateHz = sampleRateHz;
      this.#sourceChannels = block.length;
    } else if (sampleRateHz !== this.#sampleRateHz || block.length !== this.#sourceChannels) {
      const at = (this.#frames / this.#sampleRateHz).toFixed(1);
      this.remark(`The sound changes its form after ${at} s; only what comes before was read.`);
      this.#full = true;
      return false;
    }
    const room = this.#limits.maxFrames - this.#frames;
    this.#blocks.push(
      block.slice(0, this.#limits.maxChannels).map((part) => (frames > room ? part.subarray(0, room) : part)),
    );
    this.#frames += Math.min(frames, room);
    if (frames > room) this.#leaveOutTheRest();
    return !this.#full;
  }

  /** Everything gathered, less `skip` samples at the start and cut to `frames` where that is shorter. */
  finish(
    container: Container,
    trim: { readonly skip?: number; readonly frames?: number } = {},
  ): DecodedAudio {
    const skip = Math.min(trim.skip ?? 0, this.#frames);
    const frames = Math.min(this.#frames - skip, trim.frames ?? Infinity);
    if (frames <= 0) {
      throw new DecodeError(
        'damaged',
        'No sound could be decoded from it: the file is cut short or damaged.',
      );
    }
    if (this.#sampleRateHz < LOWEST_RATE_HZ || this.#sampleRateHz > HIGHEST_RATE_HZ) {
      throw new DecodeError(
        'damaged',
        `It claims ${this.#sampleRateHz} samples a second, which no recording has: the file is damaged.`,
      );
    }
    if (this.#sourceChannels > this.#limits.maxChannels) {
      this.remark(
        `It has ${this.#sourceChannels} channels; the first ${this.#limits.maxChannels} were read.`,
      );
    }
    const channels = this.#blocks[0]!.map((_, channel) =>
      this.#joined(channel).subarray(skip, skip + frames),
    );
    return { channels, sampleRateHz: this.#sampleRateHz, container, remarks: this.#remarks };
  }

  #leaveOutTheRest(): void {
    const minutes = Math.floor(this.#limits.maxFrames / this.#sampleRateHz / 6) / 10;
    this.remark(`It is longer than ${minutes} minutes; the rest was left out. Cut it to hear the rest.`);
    this.#full = true;
  }

  #joined(channel: number): Float32Array {
    const whole = this.#blocks.length === 1 ? this.#blocks[0]![channel]! : new Float32Array(this.#frames);
    if (this.#blocks.length > 1) {
      let at = 0;
      for (const block of this.#blocks) {
        whole.set(block[channel]!, at);
        at += block[channel]!.length;
      }
    }
    silenceWhatIsNoNumber(whole);
    return whole;
  }
}

/** Looks first, without branches, since nearly always there is nothing to do: only NaN and ±∞ times 0 are not 0. */
function silenceWhatIsNoNumber(samples: Float32Array): void {
  let sum = 0;
  for (let i = 0; i < samples.length; i++) sum += samples[i]! * 0;
  if (sum === 0) return;
  for (let i = 0; i < samples.length; i++) if (!Number.isFinite(samples[i]!)) samples[i] = 0;
}
