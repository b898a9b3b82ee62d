import type { Trouble } from '../troubles/index.ts';

/** Something that happened to an open microphone. Sound recorded until then is kept. */
export interface MicrophoneTrouble {
  /**
   * gone: unplugged or taken for good; silenced: another app has it for the moment; asleep: the page's sound was stopped, by a
   * locked screen or a call; gap: sound was lost; back: it goes on as before
   */
  readonly kind: 'gone' | 'silenced' | 'asleep' | 'gap' | 'back';
  readonly trouble: Trouble;
  /** sound lost, seconds; 0 where none was */
  readonly lostSec: number;
}

export function happened(kind: MicrophoneTrouble['kind'], lostSec = 0): MicrophoneTrouble {
  const trouble: Trouble =
    kind === 'gap' ? { trouble: 'sound-lost', lostSec } : { trouble: `microphone-${kind}` };
  return { kind, trouble, lostSec };
}

/** how far sound may lag behind the clock between one look and the next before some must have been lost, seconds */
const LEAST_GAP_SEC = 0.06;
/** blocks come in bunches; the least lag of so long a time tells, seconds */
const LOOK_SEC = 2;

/**
 * Frames received, against the clock → sound lost on the way that nobody tells of. The least lag of each two seconds is compared
 * with that of the two before, so that a sound card whose clock runs a little differently is no loss.
 */
export class GapWatch {
  readonly #sampleRateHz: number;
  #lookEndSec: number | null = null;
  #leastSec = Infinity;
  #beforeSec: number | null = null;

  constructor(sampleRateHz: number) {
    this.#sampleRateHz = sampleRateHz;
  }

  /** `frames` have come in all, at `clockSec`. Returns seconds found lost, or 0. */
  look(frames: number, clockSec: number): number {
    this.#lookEndSec ??= clockSec + LOOK_SEC;
    this.#leastSec = Math.min(this.#leastSec, clockSec - frames / this.#sampleRateHz);
    if (clockSec < this.#lookEndSec) return 0;
    const lostSec = this.#beforeSec === null ? 0 : this.#leastSec - this.#beforeSec;
    this.#beforeSec = this.#leastSec;
    this.#leastSec = Infinity;
    this.#lookEndSec = clockSec + LOOK_SEC;
    return lostSec >= LEAST_GAP_SEC ? lostSec : 0;
  }

  /** The sound stood still for a known reason: begin anew. */
  restart(): void {
    this.#lookEndSec = null;
    this.#leastSec = Infinity;
    this.#beforeSec = null;
  }
}
