/** Something that happened to an open microphone, in plain words with the way out. Sound recorded until then is kept. */
export interface MicrophoneTrouble {
  /**
   * gone: unplugged or taken for good; silenced: another app has it for the moment; asleep: the page's sound was stopped, by a
   * locked screen or a call; gap: sound was lost; back: it goes on as before
   */
  readonly kind: 'gone' | 'silenced' | 'asleep' | 'gap' | 'back';
  readonly message: string;
  /** sound lost, seconds; 0 where none was */
  readonly lostSec: number;
}

const MESSAGES: Readonly<Record<Exclude<MicrophoneTrouble['kind'], 'gap'>, string>> = {
  gone: 'The microphone is gone: unplugged, or taken by the system. What was heard until then is kept. Connect it again, then start listening again.',
  silenced: 'Another app has taken the microphone. Listening goes on when that app gives it back.',
  asleep: 'Listening has stopped because the screen was locked or a call came in. Touch the page to go on.',
  back: 'The microphone is back; listening goes on.',
};

export function troubleOf(kind: MicrophoneTrouble['kind'], lostSec = 0): MicrophoneTrouble {
  if (kind !== 'gap') return { kind, message: MESSAGES[kind], lostSec };
  const lost = lostSec.toFixed(lostSec < 1 ? 2 : 1);
  return {
    kind,
    message: `About ${lost} s of sound were lost because the device was busy. Close other apps, and play this attempt again.`,
    lostSec,
  };
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
