import { pinnedSpots, type Pin } from './pins.ts';
import { indicesIn, playRange, soundingAt, type PlayRange, type Spot } from './spots.ts';
import { stretchRange, wholeRange, type Stretch } from './stretches.ts';

/** What plays an attempt. */
interface Plays {
  /** place in the recording that sounds now, seconds; null: nothing plays */
  readonly positionSec: number | null;
  play(fromSec: number, toSec?: number): void;
}

/** What is touched, chosen and heard of a string of pearls, and marked wherever its notes are shown. */
export class Touched {
  /** index of the spot touched last; null: none yet */
  chosen: number | null = $state(null);
  /** name of the pin touched last; null: none */
  pin: string | null = $state(null);
  /** what is to be played; null: the whole */
  stretch: Stretch | null = $state.raw(null);
  /** the spots that sound where the player stands, by index; empty where nothing plays */
  readonly sounding: ReadonlySet<number>;
  readonly #spots: () => readonly Spot[];
  readonly #player: () => Plays | null;

  /** `player` null: nothing can be heard. To be made while a component is, whose attempt may change: then nothing is touched. */
  constructor(spots: () => readonly Spot[], player: () => Plays | null) {
    this.#spots = spots;
    this.#player = player;
    // As text, so that a frame in which nothing new sounds changes nothing.
    const now = $derived.by(() => {
      const at = player()?.positionSec ?? null;
      const sounding = at === null ? [] : soundingAt(spots(), at);
      return sounding.map(({ index }) => index).join(' ');
    });
    this.sounding = $derived(indicesIn(now));
    $effect(() => {
      spots();
      this.chosen = null;
      this.pin = null;
      this.stretch = null;
    });
  }

  /** place in the recording that sounds now, seconds; null: nothing plays */
  get positionSec(): number | null {
    return this.#player()?.positionSec ?? null;
  }

  /** Chooses a spot and plays it among its neighbours. */
  touch(index: number): void {
    const spot = this.#spots()[index];
    if (spot === undefined) return;
    this.chosen = index;
    this.#play(playRange(this.#spots(), spot));
  }

  /** The same for a step: of its spots the one where something is wrong. */
  touchStep(step: number): void {
    const there = this.#spots().filter((spot) => spot.step === step);
    const wrong = there.find(({ pearls }) => pearls.some(({ kind }) => kind !== 'struck'));
    const spot = wrong ?? there[0];
    if (spot !== undefined) this.touch(spot.index);
  }

  /** Shows and plays a step that something was found at; undefined: it was found of the whole, which is played. */
  touchFound(step: number | undefined): void {
    if (step !== undefined) return this.touchStep(step);
    this.stretch = null;
    this.play();
  }

  /** Chooses what a pin speaks of, and plays it. */
  touchPin(pin: Pin): void {
    this.pin = pin.id;
    const [first] = pinnedSpots(this.#spots(), pin);
    if (pin.spot !== null && first !== undefined) {
      this.stretch = null;
      this.touch(first.index);
    } else {
      this.stretch = { fromStep: pin.fromStep, toStep: pin.toStep };
      this.play();
    }
  }

  /** Plays the stretch, or the whole. */
  play(): void {
    const spots = this.#spots();
    this.#play(this.stretch === null ? wholeRange(spots) : stretchRange(spots, this.stretch));
  }

  #play(range: PlayRange | null): void {
    if (range !== null) this.#player()?.play(range.fromSec, range.toSec);
  }
}
