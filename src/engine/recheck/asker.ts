import type { Hand } from '../exercise/index.ts';
import type { Candidate, Heard, KeptSound } from '../listen/index.ts';
import { stretchCents } from '../listen/transcribe/stretch.ts';
import type { Alignment } from '../match/index.ts';
import { RECHECK_BOUNDS } from './bounds.ts';
import { createLook } from './look/index.ts';
import type { Look, Told } from './look/index.ts';
import { isHeard, momentIn, stepsHeard, UsualHands } from './steps.ts';
import type { StepHeard } from './steps.ts';

/** A look, and what the blind ear had said of the same key there. */
export interface Answer extends Look {
  readonly candidate: Candidate | null;
}

/** Puts questions about keys at steps to the closer look, with all that the first listening knows. */
export class Asker {
  readonly steps: readonly StepHeard[];
  /** hands that were heard to play */
  readonly hands: readonly Hand[];
  readonly #heard: Heard;
  readonly #sound: KeptSound;
  readonly #look: ReturnType<typeof createLook>;
  readonly #usual: UsualHands;

  constructor(heard: Heard, sound: KeptSound, alignment: Alignment) {
    this.steps = stepsHeard(heard, alignment);
    this.hands = (['left', 'right'] as const).filter((hand) => isHeard(hand, alignment));
    this.#heard = heard;
    this.#sound = sound;
    this.#look = createLook(sound.samples);
    this.#usual = new UsualHands(heard, alignment);
  }

  /** `midi` as the listener numbers keys; `place`: the written note that it is, if it is one; `heardSec`: when it was heard, if it was. Null at a step of which nothing was heard. */
  ask(
    step: number,
    midi: number,
    hand: Hand,
    place: number | null,
    heardSec: number | null = null,
  ): Answer | null {
    const moment = momentIn(this.steps[step]!, hand, heardSec);
    if (moment === null) return null;
    const { timeSec, written } = moment;
    const near = (this.#heard.candidates ?? []).filter(
      (one) => Math.abs(one.timeSec - timeSec) < RECHECK_BOUNDS.nearSec,
    );
    const bestOf = (key: number): Candidate | null =>
      near.reduce<Candidate | null>(
        (best, one) => (one.midi === key && (best?.probability ?? 0) < one.probability ? one : best),
        null,
      );
    const told = (semitones: number): Told | null => {
      const one = bestOf(midi + semitones);
      return one === null ? null : { ...one, apartSec: one.timeSec - timeSec };
    };
    const before = this.#neighbour(step, -1, timeSec);
    const after = this.#neighbour(step, 1, timeSec);
    const look = this.#look({
      timeSec,
      midi,
      cents: this.#heard.tuning.cents + stretchCents(midi),
      gain: this.#sound.gainAt(timeSec),
      written,
      before: before && { midis: before.midis, sinceSec: timeSec - before.timeSec },
      after: after && { midis: after.midis, untilSec: after.timeSec - timeSec },
      told,
      ownHand: this.#usual.of(hand, place),
      otherHand: this.#usual.of(hand === 'left' ? 'right' : 'left', null),
    });
    return { ...look, candidate: bestOf(midi) };
  }

  /** The step beside one, and when it came: where nothing of it was heard, spread evenly to the next that was. */
  #neighbour(
    step: number,
    way: -1 | 1,
    here: number,
  ): { readonly midis: readonly number[]; readonly timeSec: number } | null {
    const beside = this.steps[step + way];
    if (beside === undefined) return null;
    for (let away = 1; this.steps[step + way * away] !== undefined; away++) {
      const { timeSec } = this.steps[step + way * away]!;
      // A step played again or out of order tells no time.
      if (timeSec !== null && (timeSec - here) * way > 0)
        return { midis: beside.written, timeSec: here + (timeSec - here) / away };
    }
    return null;
  }
}
