import { fork } from 'node:child_process';
import type { ExerciseChoice, HandsAlone } from '../../engine/index.ts';
import { Pool } from '../../io/sorting/pool.ts';
import type { Port, PortEvents } from '../../io/sorting/pool.ts';
import { aloneElsewhere, isSameDay } from './arrange.ts';
import { HELPER } from './types.ts';
import type { Outcome, PileReply, PileRequest, Recording, Sorted } from './types.ts';

/** What helpers may hold of recordings together, MB; with their programs it stays under 500. */
const BUDGET_MB = 300;

/** Less room for what is thrown away at once, and fewer heaps of the C library: a quarter of the memory, 3 % of the time. */
const SPARING = ['--max-semi-space-size=8'];
const SPARING_ENV = { MALLOC_ARENA_MAX: '2' };

/** How a run is set up. */
export interface CrewOptions {
  /** the command's own file, which is started again for each helper */
  readonly command: string;
  readonly workers: number;
  readonly targetBpm: number | null;
  readonly evennessPercent: number | null;
  /** passages of one's own that a recording may be */
  readonly own: readonly ExerciseChoice[];
  readonly kept: PileRequest['kept'];
}

/** Helpers that are at work. */
export interface Crew {
  /** A bad recording, and even one on which a decoder breaks down, is an outcome like any other. `alone`: taught of hands alone elsewhere. */
  sort(recording: Recording, alone: HandsAlone | null, onShare: (share: number) => void): Promise<Outcome>;
  close(): void;
}

/** Helpers for so many recordings, started when they are first needed. */
export function openCrew(
  { workers, command, targetBpm, evennessPercent, own, kept }: CrewOptions,
  most: number,
): Crew {
  const pool = new Pool<PileRequest, Sorted>({
    workers: Math.max(1, Math.min(workers, most)),
    budgetMb: BUDGET_MB,
    open: (events) => startHelper(command, events),
  });
  return {
    sort: (recording, alone, onShare) =>
      new Promise((resolve) => {
        const { source, name, pianosCents, needsMb } = recording;
        pool.ask({
          request: { source, name, targetBpm, evennessPercent, alone, pianosCents, own, kept },
          name,
          needsMb,
          onReply: (reply) => {
            if (reply.kind === 'progress') onShare(reply.share);
            if (reply.kind === 'done') resolve({ recording, sorted: reply.file });
          },
          reject: ({ reason, trouble }) =>
            resolve({ recording, problem: reason === 'unreadable' ? 'unreadable' : 'failed', trouble }),
        });
      }),
    close: () => pool.cancel({ trouble: 'sorting-called-off' }),
  };
}

/** Where a recording may be sorted again, the first time is so much of the work. */
const FIRST_SHARE = 0.5;

/**
 * Sorts recordings in processes of their own, several at a time; `onProgress` gets the share of the work done, 0..1, and
 * how many are sorted (and kept). Those with attempts of both hands are sorted again where others of their student and day taught hands alone. A bad recording, and even one on which a decoder breaks down, is an outcome like any other.
 */
export async function sortPile(
  recordings: readonly Recording[],
  options: CrewOptions,
  onProgress: (share: number, sorted: number) => void,
): Promise<readonly Outcome[]> {
  const { sort, close } = openCrew(options, recordings.length);
  const shares = recordings.map(() => 0);
  let sorted = 0;
  const tell = (index: number, share: number): void => {
    shares[index] = share;
    onProgress(shares.reduce((sum, one) => sum + one, 0) / recordings.length, sorted);
  };
  const ofOneDay = (one: Recording): boolean =>
    recordings.some((other) => other !== one && isSameDay(one, other));
  /** What was sorted once stays where it cannot be sorted again. */
  const sortAgain = async (before: Outcome, alone: HandsAlone, index: number): Promise<Outcome> => {
    const again = await sort(before.recording, alone, (share) =>
      tell(index, FIRST_SHARE + (1 - FIRST_SHARE) * share),
    );
    return 'sorted' in again ? again : before;
  };
  try {
    const first = await Promise.all(
      recordings.map(async (recording, index) => {
        const whole = ofOneDay(recording) ? FIRST_SHARE : 1;
        const outcome = await sort(recording, null, (share) => tell(index, whole * share));
        sorted += 1;
        tell(index, whole);
        return outcome;
      }),
    );
    const known = aloneElsewhere(first);
    return await Promise.all(
      first.map(async (before, index) => {
        const alone = known[index]!;
        const last = alone === null ? before : await sortAgain(before, alone, index);
        tell(index, 1);
        return last;
      }),
    );
  } finally {
    close();
  }
}

function startHelper(command: string, events: PortEvents<Sorted>): Port<PileRequest> {
  const child = fork(command, [HELPER], {
    // Decoders print what they stumble over; only whoever looks for a fault wants to see it.
    stdio: ['ignore', 'ignore', process.env['NODE_DEBUG'] === undefined ? 'ignore' : 'inherit', 'ipc'],
    execArgv: [...process.execArgv, ...SPARING],
    env: { ...process.env, ...SPARING_ENV },
  });
  let ended = false;
  child.on('message', (reply: PileReply) => events.reply(reply));
  child.on('error', () => events.died({ trouble: 'helper-not-started' }));
  child.on('exit', () => {
    if (!ended) events.died({ trouble: 'helper-broke-down' });
  });
  return {
    post: (request) => void child.send(request),
    // It would end by itself when nobody is there any more, but not where it runs in a circle.
    end: () => {
      ended = true;
      child.kill('SIGKILL');
    },
  };
}
