/** How loud the microphone is right now. */
export interface Level {
  /** over the last 100 ms or so, dB (0 dB: full scale); −120 for silence */
  readonly rmsDb: number;
  readonly peakDb: number;
  /** greatest peak of the last two seconds, dB */
  readonly heldPeakDb: number;
  /** full scale was reached in the last second */
  readonly clipped: boolean;
}

/** Full scale with room for the rounding of a converter: 32 766 of 32 768. */
const CLIP_LEVEL = 0.9999;
const FLOOR_DB = -120;
const SPAN_SEC = 0.1;
const HOLD_SEC = 2;
const CLIP_SEC = 1;

const toDb = (amplitude: number): number => Math.max(20 * Math.log10(amplitude), FLOOR_DB);

/** A microphone's blocks → its level, peak hold and clip warning. */
export class LevelMeter {
  readonly #sampleRateHz: number;
  /** power, samples and peak of the latest blocks, as many as make up `SPAN_SEC` */
  #recent: { readonly power: number; readonly frames: number; readonly peak: number }[] = [];
  #held = 0;
  #sinceHeld = 0;
  #sinceClip = Infinity;

  constructor(sampleRateHz: number) {
    this.#sampleRateHz = sampleRateHz;
  }

  push(channels: readonly Float32Array[], frames: number): void {
    let power = 0;
    let peak = 0;
    for (const channel of channels) {
      for (let i = 0; i < frames; i++) {
        const value = channel[i]!;
        power += value * value;
        peak = Math.max(peak, Math.abs(value));
      }
    }
    this.#recent.push({ power: power / Math.max(1, channels.length), frames, peak });
    let kept = this.#recent.reduce((sum, block) => sum + block.frames, 0);
    while (kept - this.#recent[0]!.frames >= SPAN_SEC * this.#sampleRateHz)
      kept -= this.#recent.shift()!.frames;
    this.#sinceHeld += frames;
    if (peak >= this.#held || this.#sinceHeld > HOLD_SEC * this.#sampleRateHz) {
      this.#held = peak;
      this.#sinceHeld = 0;
    }
    this.#sinceClip = peak >= CLIP_LEVEL ? 0 : this.#sinceClip + frames;
  }

  level(): Level {
    const frames = this.#recent.reduce((sum, block) => sum + block.frames, 0);
    const power = this.#recent.reduce((sum, block) => sum + block.power, 0);
    return {
      rmsDb: frames === 0 ? FLOOR_DB : toDb(Math.sqrt(power / frames)),
      peakDb: toDb(this.#recent.reduce((most, { peak }) => Math.max(most, peak), 0)),
      heldPeakDb: toDb(this.#held),
      clipped: this.#sinceClip < CLIP_SEC * this.#sampleRateHz,
    };
  }
}
