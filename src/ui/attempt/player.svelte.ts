import type { Playback } from '../../io/playback/index.ts';
import type { Versions } from './retiming.ts';

/** Calls back once a frame for as long as it returns true. */
export type EachFrame = (tick: () => boolean) => void;

/** As played; even; with the crossings in time; as played and then even. */
export type Way = 'played' | 'even' | 'crossings' | 'beside';

/** Slowest speed, and by how much it is changed, per cent of the speed played at. */
export const SPEED = { least: 50, most: 100, step: 5 } as const;

interface Stretch {
  readonly fromSec: number;
  readonly toSec: number | undefined;
}

/** Plays an attempt, slower or re-timed where that is wished, and knows where it is. */
export class Player {
  /** place in the recording that sounds now, seconds; null: nothing plays */
  positionSec: number | null = $state(null);
  /** what plays is the even version or the one without late crossings */
  retimed = $state(false);
  readonly #playback: Playback;
  readonly #eachFrame: EachFrame;
  readonly #versions: Versions | null;
  #speedPercent: number = $state(SPEED.most);
  #looping = $state(false);
  #way: Way = $state('played');
  #stretch: Stretch | null = null;
  /** of both, the original plays and the even one is still to come */
  #secondToCome = false;
  #following = false;

  /** `versions` null: the attempt can be heard only as it was played. */
  constructor(playback: Playback, eachFrame: EachFrame, versions: Versions | null = null) {
    this.#playback = playback;
    this.#eachFrame = eachFrame;
    this.#versions = versions;
    playback.onEnd(() => this.#ended());
  }

  get speedPercent(): number {
    return this.#speedPercent;
  }
  set speedPercent(percent: number) {
    this.#speedPercent = Math.min(Math.max(percent, SPEED.least), SPEED.most);
    this.#again();
  }

  /** a stretch is played again and again */
  get looping(): boolean {
    return this.#looping;
  }
  set looping(looping: boolean) {
    this.#looping = looping;
    this.#again();
  }

  get way(): Way {
    return this.#way;
  }
  set way(way: Way) {
    this.#way = way;
    this.#again();
  }

  /** the ways in which this attempt can be heard */
  get ways(): readonly Way[] {
    return [
      'played',
      ...(this.#versions?.even ? (['even', 'beside'] as const) : []),
      ...(this.#versions?.crossings ? (['crossings'] as const) : []),
    ];
  }

  play(fromSec: number, toSec?: number): void {
    this.#stretch = { fromSec, toSec };
    this.#secondToCome = this.#way === 'beside';
    this.#start();
  }

  stop(): void {
    this.#playback.stop();
    this.#stretch = null;
    this.positionSec = null;
  }

  close(): void {
    this.stop();
    this.#playback.close();
  }

  #start(): void {
    if (this.#stretch === null) return;
    const { fromSec, toSec } = this.#stretch;
    const way = this.#way !== 'beside' ? this.#way : this.#secondToCome ? 'played' : 'even';
    const attacks = this.#versions?.[way]?.attacks ?? [];
    // At its own speed a recording is played as it is, without a search for joins.
    const asItIs = way === 'played' && this.#speedPercent === 100;
    const loop = this.#looping && this.#way !== 'beside';
    this.#playback.play(fromSec, toSec, {
      speed: this.#speedPercent / 100,
      loop,
      attacks: asItIs ? [] : attacks,
    });
    this.retimed = way !== 'played';
    this.positionSec = fromSec;
    if (this.#following) return;
    this.#following = true;
    this.#eachFrame(() => {
      this.positionSec = this.#playback.positionSec();
      this.#following = this.positionSec !== null;
      return this.#following;
    });
  }

  #ended(): void {
    this.positionSec = null;
    const again = this.#way === 'beside' && (this.#secondToCome || this.#looping);
    if (!again) this.#stretch = null;
    this.#secondToCome = !this.#secondToCome;
    if (again) this.#start();
  }

  /** What plays goes on from the start of its stretch with the new settings. */
  #again(): void {
    if (this.positionSec === null || this.#stretch === null) return;
    this.#secondToCome = this.#way === 'beside';
    this.#start();
  }
}
