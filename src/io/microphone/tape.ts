/** One second of sound or so, as it came. */
interface Reel {
  readonly channels: readonly Float32Array[];
  /** frame of the whole sound at which it begins */
  from: number;
  /** all channels were equal: browsers hand a microphone of one channel out as two */
  alike: boolean;
}

/**
 * The last of what the microphone heard, and everything since a mark. Blocks are copied; memory that has become free is used
 * again, so that an hour of listening needs no more than a minute.
 */
export class Tape {
  readonly #channels: number;
  readonly #reelFrames: number;
  readonly #pastFrames: number;
  readonly #reels: Reel[] = [];
  readonly #spares: Reel[] = [];
  #end = 0;
  #mark = Infinity;

  /** @param pastFrames so much of the past is kept at least */
  constructor(options: {
    readonly channels: number;
    readonly reelFrames: number;
    readonly pastFrames: number;
  }) {
    this.#channels = options.channels;
    this.#reelFrames = options.reelFrames;
    this.#pastFrames = options.pastFrames;
  }

  /** frames taken so far */
  get end(): number {
    return this.#end;
  }

  /** Everything from this frame on stays until the mark is moved or taken away (null). */
  keepFrom(frame: number | null): void {
    this.#mark = frame ?? Infinity;
  }

  /** Copies the first `frames` of a block. */
  push(block: readonly Float32Array[], frames: number): void {
    for (let at = 0; at < frames;) {
      const reel = this.#current();
      const to = this.#end - reel.from;
      const count = Math.min(frames - at, this.#reelFrames - to);
      for (let i = 0; i < count; i++) {
        for (let channel = 0; channel < this.#channels; channel++)
          reel.channels[channel]![to + i] = block[channel]![at + i]!;
      }
      for (let channel = 1; reel.alike && channel < this.#channels; channel++)
        for (let i = 0; reel.alike && i < count; i++)
          reel.alike = block[channel]![at + i] === block[0]![at + i];
      at += count;
      this.#end += count;
    }
  }

  /** The sound from `from` to before `to`, cut to what is there: one channel where all are equal. */
  take(from: number, to: number): Float32Array[] {
    const first = Math.max(from, this.#reels[0]?.from ?? this.#end);
    const end = Math.max(first, Math.min(to, this.#end));
    const reels = this.#reels.filter((reel) => reel.from < end && reel.from + this.#reelFrames > first);
    const channels = reels.every(({ alike }) => alike) ? 1 : this.#channels;
    return Array.from({ length: channels }, (_, channel) => {
      const whole = new Float32Array(end - first);
      for (const reel of reels) {
        const begin = Math.max(first, reel.from);
        const stop = Math.min(end, reel.from + this.#reelFrames);
        whole.set(reel.channels[channel]!.subarray(begin - reel.from, stop - reel.from), begin - first);
      }
      return whole;
    });
  }

  #current(): Reel {
    const last = this.#reels.at(-1);
    if (last !== undefined && this.#end < last.from + this.#reelFrames) return last;
    const keep = Math.min(this.#mark, this.#end - this.#pastFrames);
    while (this.#reels.length > 0 && this.#reels[0]!.from + this.#reelFrames <= keep)
      this.#spares.push(this.#reels.shift()!);
    // A long attempt is over: what it needed beyond the past goes back to the system.
    this.#spares.length = Math.min(this.#spares.length, 1);
    const reel = this.#spares.pop() ?? {
      channels: Array.from({ length: this.#channels }, () => new Float32Array(this.#reelFrames)),
      from: 0,
      alike: true,
    };
    reel.from = this.#end;
    reel.alike = true;
    this.#reels.push(reel);
    return reel;
  }
}
