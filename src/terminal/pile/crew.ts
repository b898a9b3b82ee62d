import { fork } from 'node:child_process';
import { Pool } from '../../io/sorting/pool.ts';
import type { Port, PortEvents } from '../../io/sorting/pool.ts';
import { HELPER } from './messages.ts';
import type { PileReply, PileRequest } from './messages.ts';
import type { Outcome, Recording, Sorted } from './types.ts';

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
  readonly kept: PileRequest['kept'];
}

/**
 * Sorts recordings in processes of their own, several at a time; `onProgress` gets how many are done, 0..count, parts of them
 * too. A bad recording, and even one on which a decoder breaks down, is an outcome like any other.
 */
export async function sortPile(
  recordings: readonly Recording[],
  options: CrewOptions,
  onProgress: (done: number) => void,
): Promise<readonly Outcome[]> {
  const { workers, command, targetBpm, kept } = options;
  const pool = new Pool<PileRequest, Sorted>({
    workers: Math.min(workers, recordings.length),
    budgetMb: BUDGET_MB,
    open: (events) => startHelper(command, events),
  });
  const shares = recordings.map(() => 0);
  const tell = (index: number, share: number): void => {
    shares[index] = share;
    onProgress(shares.reduce((sum, one) => sum + one, 0));
  };
  const sorted = recordings.map(
    (recording, index) =>
      new Promise<Outcome>((resolve) => {
        const { source, name, needsMb } = recording;
        const end = (outcome: Outcome): void => {
          tell(index, 1);
          resolve(outcome);
        };
        pool.ask({
          request: { source, name, targetBpm, kept },
          name,
          needsMb,
          onReply: (reply) => {
            if (reply.kind === 'progress') tell(index, reply.share);
            if (reply.kind === 'done') end({ recording, sorted: reply.file });
          },
          reject: ({ reason, trouble }) =>
            end({
              recording,
              problem: reason === 'unreadable' ? 'unreadable' : 'failed',
              trouble,
            }),
        });
      }),
  );
  try {
    return await Promise.all(sorted);
  } finally {
    pool.cancel({ trouble: 'sorting-called-off' });
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
