import { SortingError } from './errors.ts';
import type { Trouble } from '../troubles/index.ts';
import type { SortReply } from './messages.ts';
import { LISTENING_SHARE } from './progress.ts';

/** A worker as the pool sees it. */
export interface Port<Request> {
  post(request: Request): void;
  end(): void;
}

/** What a worker tells the pool. */
export interface PortEvents<File> {
  reply(reply: SortReply<File>): void;
  /** it ended by itself, and why (out of memory, say); it is not asked again */
  died(why: Trouble): void;
}

export interface PoolOptions<Request, File> {
  readonly workers: number;
  readonly open: (events: PortEvents<File>) => Port<Request>;
  /** what those at work may hold together, MB; a file that needs more is done alone */
  readonly budgetMb: number;
  /** so long a worker may be silent that is so far with its file, 0..1, ms; then it is ended, and its file refused */
  readonly patienceMs?: (share: number) => number;
}

/** A worker says each second that it gets on, but while it works out the attempts of half an hour; at the end of all it is silent longest. */
export const PATIENCE_MS = (share: number): number => (share < LISTENING_SHARE ? 300_000 : 900_000);

/** A machine that slept has looked once, however long it slept: only time in which there was something to hear counts. */
const LOOKS = 10;

interface Job<Request, File> {
  readonly request: Request;
  /** of the file, for messages */
  readonly name: string;
  readonly needsMb: number;
  readonly onReply: (reply: SortReply<File>) => void;
  readonly reject: (error: SortingError) => void;
}

interface Hand<Request, File> {
  port: Port<Request> | null;
  job: Job<Request, File> | null;
  /** ends a worker that has been silent too long */
  watch: ReturnType<typeof setTimeout> | undefined;
}

/**
 * Shares jobs out to workers, in the order in which they were asked for, one a worker and never more at once than memory
 * allows. Workers are started when they are first needed and live until `cancel` or `close`; one that dies, or gets on no more,
 * fails its job and is replaced.
 */
export class Pool<Request, File> {
  readonly #options: PoolOptions<Request, File>;
  readonly #hands: Hand<Request, File>[];
  #waiting: Job<Request, File>[] = [];

  constructor(options: PoolOptions<Request, File>) {
    this.#options = options;
    this.#hands = Array.from({ length: Math.max(1, options.workers) }, () => ({
      port: null,
      job: null,
      watch: undefined,
    }));
  }

  /** Asks for a job; all of the worker's replies come to `onReply`, up to the one that is 'done' or 'failed'. */
  ask(job: Job<Request, File>): void {
    this.#waiting.push(job);
    this.#next();
  }

  /** Ends all workers at once; every job that is not done is rejected. */
  cancel(why: Trouble): void {
    const stopped = [...this.#hands.flatMap(({ job }) => job ?? []), ...this.#waiting];
    this.#waiting = [];
    for (const hand of this.#hands) {
      hand.port?.end();
      this.#drop(hand);
    }
    for (const job of stopped) job.reject(new SortingError('cancelled', why));
  }

  #next(): void {
    for (const hand of this.#hands) {
      const job = this.#waiting[0];
      if (job === undefined) return;
      if (hand.job !== null) continue;
      const atWork = this.#hands.flatMap((other) => other.job ?? []);
      const heldMb = atWork.reduce((sum, { needsMb }) => sum + needsMb, 0);
      if (atWork.length > 0 && heldMb + job.needsMb > this.#options.budgetMb) return;
      this.#waiting.shift();
      hand.job = job;
      hand.port ??= this.#open(hand);
      hand.port.post(job.request);
      this.#watch(hand, 0);
    }
  }

  /** From now on the hand's worker must be heard of again in time. */
  #watch(hand: Hand<Request, File>, share: number, looks = LOOKS): void {
    const { patienceMs = PATIENCE_MS } = this.#options;
    clearTimeout(hand.watch);
    hand.watch = setTimeout(
      () => {
        if (looks > 1) return this.#watch(hand, share, looks - 1);
        const { job, port } = hand;
        port?.end();
        this.#drop(hand);
        job?.reject(
          new SortingError('unreadable', { trouble: 'within', name: job.name, of: { trouble: 'no-end' } }),
        );
        this.#next();
      },
      patienceMs(share) / LOOKS,
    );
  }

  #drop(hand: Hand<Request, File>): void {
    clearTimeout(hand.watch);
    hand.port = null;
    hand.job = null;
  }

  #open(hand: Hand<Request, File>): Port<Request> {
    // A port that was ended may still have something to say: only the one in the hand is heard.
    const isMine = (): boolean => hand.port === port;
    const port: Port<Request> = this.#options.open({
      reply: (reply) => {
        const { job } = hand;
        if (!isMine() || job === null) return;
        if (reply.kind === 'done' || reply.kind === 'failed') {
          clearTimeout(hand.watch);
          hand.job = null;
        } else this.#watch(hand, reply.kind === 'progress' ? reply.share : 0);
        if (reply.kind === 'failed') job.reject(new SortingError(reply.reason, reply.trouble));
        else job.onReply(reply);
        this.#next();
      },
      died: (why) => {
        if (!isMine()) return;
        const { job } = hand;
        this.#drop(hand);
        job?.reject(new SortingError('failed', why));
        this.#next();
      },
    });
    return port;
  }
}
