/** How loud the microphone is right now. */
export interface Level {
  /** over the last 100 ms or so, dB (0 dB: full scale); −120 for silence */
  readonly rmsDb: number;
  readonly peakDb: number;
  /** full scale was reached in the last second */
  readonly clipped: boolean;
}

/** Full scale with room for the rounding of a converter: 32 766 of 32 768. */
const CLIP_LEVEL = 0.9999;
const FLOOR_DB = -120;

/** What is kept of a microphone's blocks: the level, a little of the past, and the take if one is running. */
export class Take {
  readonly #sampleRateHz: number;
  readonly #preRollFrames: number;
  #recent: Float32Array[][] = [];
  #recentFrames = 0;
  #take: Float32Array[][] | null = null;
  #sinceClip = Infinity;

  constructor(sampleRateHz: number, preRollSec: number) {
    this.#sampleRateHz = sampleRateHz;
    this.#preRollFrames = Math.round(preRollSec * sampleRateHz);
  }

  push(block: Float32Array[]): void {
    const frames = block[0]?.length ?? 0;
    this.#take?.push(block);
    this.#recent.push(block);
    this.#recentFrames += frames;
    const keep = Math.max(this.#preRollFrames, this.#levelFrames);
    while (this.#recentFrames - (this.#recent[0]?.[0]?.length ?? 0) >= keep) {
      this.#recentFrames -= this.#recent.shift()![0]!.length;
    }
    const clips = block.some((channel) => channel.some((value) => Math.abs(value) >= CLIP_LEVEL));
    this.#sinceClip = clips ? 0 : this.#sinceClip + frames;
  }

  level(): Level {
    let power = 0;
    let peak = 0;
    let count = 0;
    let frames = 0;
    for (let i = this.#recent.length - 1; i >= 0 && frames < this.#levelFrames; i--) {
      const block = this.#recent[i]!;
      frames += block[0]!.length;
      for (const channel of block) {
        for (const value of channel) {
          power += value * value;
          peak = Math.max(peak, Math.abs(value));
        }
        count += channel.length;
      }
    }
    const toDb = (amplitude: number): number => Math.max(20 * Math.log10(amplitude), FLOOR_DB);
    return {
      rmsDb: count === 0 ? FLOOR_DB : toDb(Math.sqrt(power / count)),
      peakDb: toDb(peak),
      clipped: this.#sinceClip < this.#sampleRateHz,
    };
  }

  /** Starts a take, the last moments before it included. */
  start(): void {
    let frames = 0;
    let from = this.#recent.length;
    while (from > 0 && frames < this.#preRollFrames) frames += this.#recent[--from]![0]!.length;
    this.#take = this.#recent.slice(from);
  }

  /**
   * Ends the take → its channels; no take: no channels. A channel that came or went is silence where it was not.
   * Browsers hand a microphone of one channel out as two equal ones: those are one.
   */
  stop(): Float32Array[] {
    const blocks = this.#take ?? [];
    this.#take = null;
    const frames = blocks.reduce((sum, block) => sum + block[0]!.length, 0);
    const channels = Math.max(0, ...blocks.map((block) => block.length));
    const [first, ...others] = Array.from({ length: channels }, (_, channel) => {
      const whole = new Float32Array(frames);
      let at = 0;
      for (const block of blocks) {
        if (block[channel] !== undefined) whole.set(block[channel], at);
        at += block[0]!.length;
      }
      return whole;
    });
    if (first === undefined) return [];
    return others.every((other) => other.every((value, i) => value === first[i]))
      ? [first]
      : [first, ...others];
  }

  get #levelFrames(): number {
    return Math.round(0.1 * this.#sampleRateHz);
  }
}
