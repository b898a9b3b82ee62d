import type { Playback } from '../../io/playback/index.ts';

/** Calls back once a frame for as long as it returns true. */
export type EachFrame = (tick: () => boolean) => void;

/** Plays an attempt and knows where it is. */
export class Player {
  /** place in the recording that sounds now, seconds; null: nothing plays */
  positionSec: number | null = $state(null);
  half = $state(false);
  readonly #playback: Playback;
  readonly #eachFrame: EachFrame;
  #following = false;

  constructor(playback: Playback, eachFrame: EachFrame) {
    this.#playback = playback;
    this.#eachFrame = eachFrame;
    playback.onEnd(() => (this.positionSec = null));
  }

  play(fromSec: number, toSec?: number): void {
    this.#playback.play(fromSec, toSec, this.half ? 0.5 : 1);
    this.positionSec = fromSec;
    if (this.#following) return;
    this.#following = true;
    this.#eachFrame(() => {
      this.positionSec = this.#playback.positionSec();
      this.#following = this.positionSec !== null;
      return this.#following;
    });
  }

  stop(): void {
    this.#playback.stop();
    this.positionSec = null;
  }

  close(): void {
    this.stop();
    this.#playback.close();
  }
}
