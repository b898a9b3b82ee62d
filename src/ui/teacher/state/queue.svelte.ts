import { troubleOf, type Trouble } from '../../../io/troubles/index.ts';

/** What the queue is told of its work. */
export interface QueueWork<T extends { readonly id: string }> {
  /** what waits now, in its order */
  readonly waiting: () => readonly T[];
  /** Does one; a rejection is this one's failure alone. */
  readonly act: (one: T, onProgress: (share: number) => void) => Promise<void>;
  readonly failed: (one: T, why: Trouble) => Promise<void>;
  /** Calls off what is under way. */
  readonly cancel: () => void;
}

/** Works off what waits, a few at a time; can be stopped and gone on with. */
export class Queue<T extends { readonly id: string }> {
  running = $state(false);
  /** how far those under way are, 0..1, by their names */
  shares: Readonly<Record<string, number>> = $state.raw({});
  readonly #work: QueueWork<T>;
  readonly #lanes: number;
  /** how often it was stopped */
  #turn = 0;
  #busyLanes = 0;
  #ended: (() => void)[] = [];

  /** `lanes`: how many are handed on at a time. */
  constructor(work: QueueWork<T>, lanes: number) {
    this.#work = work;
    this.#lanes = lanes;
  }

  /** To be called whenever something new waits, too. Resolves when nothing waits any more, or it was stopped. */
  start(): Promise<void> {
    const free = this.#work.waiting().filter(({ id }) => this.shares[id] === undefined).length;
    if (free === 0 && this.#busyLanes === 0) return Promise.resolve();
    this.running = true;
    const more = Math.min(free, this.#lanes - this.#busyLanes);
    for (let lane = 0; lane < more; lane += 1) void this.#lane(this.#turn);
    return new Promise((resolve) => (this.#ended = [...this.#ended, resolve]));
  }

  /** To be asked later whether it was stopped since: what comes in then must not set it going again. */
  notStoppedSince(): () => boolean {
    const turn = this.#turn;
    return () => turn === this.#turn;
  }

  /** What is under way waits again, and what is being taken in will wait. */
  stop(): void {
    this.#turn += 1;
    if (!this.running) return;
    this.#end();
    this.#work.cancel();
  }

  async #lane(turn: number): Promise<void> {
    this.#busyLanes += 1;
    for (;;) {
      const next = this.#work.waiting().find(({ id }) => this.shares[id] === undefined);
      if (next === undefined) break;
      this.#share(next.id, 0);
      try {
        await this.#work.act(next, (share) => {
          if (turn === this.#turn) this.#share(next.id, share);
        });
      } catch (error) {
        // Called off: it waits again, and this lane is not counted any more.
        if (turn !== this.#turn) return;
        await this.#work.failed(next, troubleOf(error));
      }
      if (turn !== this.#turn) return;
      // What is done may come to wait again.
      this.shares = Object.fromEntries(Object.entries(this.shares).filter(([id]) => id !== next.id));
    }
    this.#busyLanes -= 1;
    if (this.#busyLanes === 0) this.#end();
  }

  #end(): void {
    this.#busyLanes = 0;
    this.running = false;
    this.shares = {};
    for (const resolve of this.#ended.splice(0)) resolve();
  }

  #share(id: string, share: number): void {
    this.shares = { ...this.shares, [id]: share };
  }
}
