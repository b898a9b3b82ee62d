import { ChannelChooser } from '../../engine/index.ts';
import type { Notice } from '../../engine/index.ts';
import { DecodeError } from './errors.ts';
import type { Container, DecodedAudio, DecodeLimits } from './types.ts';

/** Sample rates that a sound file can sensibly have: telephone to studio, Hz. */
const LOWEST_RATE_HZ = 4_000;
const HIGHEST_RATE_HZ = 768_000;

/**
 * Collects decoded blocks into whole channels, within the limits, or hands them on where somebody takes them. `push` says
 * whether more is wanted, so that a decoder of a long file can stop early. Values that are no numbers (a damaged
 * floating-point file) become silence.
 */
export class SoundGatherer {
  readonly #limits: DecodeLimits;
  readonly #blocks: Float32Array[][] = [];
  readonly #remarks: Notice[] = [];
  #sampleRateHz = 0;
  #sourceChannels = 0;
  #frames = 0;
  /** how much of the file the last block brought that to */
  #share = 0;
  /** samples to leave out at the start */
  #skip: number;
  #full = false;
  /** of more channels than are wanted: the one that sounds */
  #chooser: ChannelChooser | null = null;

  constructor(limits: DecodeLimits, skip = 0) {
    this.#limits = limits;
    this.#skip = skip;
  }

  /** So many samples at the start are the encoder's own and no part of the recording; to be told before the first block. */
  leaveOut(skip: number): void {
    this.#skip = skip;
  }

  /** samples a channel so far, with those left out */
  get frames(): number {
    return this.#frames;
  }

  /** 0 before the first block */
  get sampleRateHz(): number {
    return this.#sampleRateHz;
  }

  /** Each kind is said once. */
  remark(notice: Notice): void {
    if (!this.#remarks.some((one) => one.notice === notice.notice)) this.#remarks.push(notice);
  }

  /** Takes a block, one array a channel; `share`: how much of the file it brings that to. True: go on, false: enough. */
  push(block: readonly Float32Array[], sampleRateHz: number, share = 0): boolean {
    const frames = block[0]?.length ?? 0;
    if (this.#full || frames === 0) return !this.#full;
    if (this.#frames === 0) {
      this.#sampleRateHz = sampleRateHz;
      this.#sourceChannels = block.length;
      this.#refuseImpossibleRate();
      if (block.length > this.#limits.maxChannels)
        this.#chooser = new ChannelChooser(block.length, (chosen, length) =>
          this.#handOn([Float32Array.from(chosen.subarray(0, length))], this.#share),
        );
    } else if (sampleRateHz !== this.#sampleRateHz || block.length !== this.#sourceChannels) {
      this.remark({ notice: 'form-changes', afterSec: this.#frames / this.#sampleRateHz });
      this.#full = true;
      return false;
    }
    const from = Math.min(Math.max(this.#skip - this.#frames, 0), frames);
    const end = Math.min(frames, this.#limits.maxFrames + this.#skip - this.#frames);
    this.#frames += end;
    if (end > from) this.#keep(block, from, end, share);
    if (end < frames) this.#leaveOutTheRest();
    return !this.#full;
  }

  /** Everything gathered, cut to `frames` where that is shorter; without samples where somebody took them. */
  finish(container: Container, mostFrames = Infinity): DecodedAudio {
    const frames = Math.min(this.#frames - this.#skip, mostFrames);
    if (frames <= 0) {
      throw new DecodeError('damaged', { trouble: 'nothing-decoded' });
    }
    if (this.#chooser !== null) {
      this.#chooser.finish();
      this.remark({ notice: 'one-channel-taken', channels: this.#sourceChannels });
    }
    const channels = (this.#blocks[0] ?? []).map((_, channel) => this.#joined(channel).subarray(0, frames));
    return { channels, sampleRateHz: this.#sampleRateHz, container, remarks: this.#remarks };
  }

  #keep(block: readonly Float32Array[], from: number, end: number, share: number): void {
    const channels = block.map((part) => {
      const kept = from === 0 && end === part.length ? part : part.subarray(from, end);
      silenceWhatIsNoNumber(kept);
      return kept;
    });
    this.#share = share;
    if (this.#chooser === null) this.#handOn(channels, share);
    else this.#chooser.push(channels);
  }

  #handOn(channels: Float32Array[], share: number): void {
    const { take } = this.#limits;
    if (take === undefined) this.#blocks.push(channels);
    else take(channels, this.#sampleRateHz, share);
  }

  #refuseImpossibleRate(): void {
    const rateHz = this.#sampleRateHz;
    if (rateHz >= LOWEST_RATE_HZ && rateHz <= HIGHEST_RATE_HZ) return;
    throw new DecodeError('damaged', { trouble: 'rate-impossible', rateHz });
  }

  #leaveOutTheRest(): void {
    this.remark(cutAt(this.#limits.maxFrames, this.#sampleRateHz));
    this.#full = true;
  }

  #joined(channel: number): Float32Array {
    if (this.#blocks.length === 1) return this.#blocks[0]![channel]!;
    const whole = new Float32Array(this.#frames - this.#skip);
    let at = 0;
    for (const block of this.#blocks) {
      whole.set(block[channel]!, at);
      at += block[channel]!.length;
    }
    return whole;
  }
}

/** The rest of a sound longer than so many samples was left out. */
export function cutAt(maxFrames: number, sampleRateHz: number): Notice {
  return { notice: 'cut-at', minutes: Math.floor(maxFrames / sampleRateHz / 6) / 10 };
}

/** Looks first, without branches, since nearly always there is nothing to do: only NaN and ±∞ times 0 are not 0. */
function silenceWhatIsNoNumber(samples: Float32Array): void {
  let sum = 0;
  for (let i = 0; i < samples.length; i++) sum += samples[i]! * 0;
  if (sum === 0) return;
  for (let i = 0; i < samples.length; i++) if (!Number.isFinite(samples[i]!)) samples[i] = 0;
}
