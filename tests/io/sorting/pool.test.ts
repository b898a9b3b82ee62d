import { describe, expect, it } from 'vitest';
import { PATIENCE_MS, Pool } from '../../../src/io/sorting/pool.ts';
import type { PortEvents } from '../../../src/io/sorting/pool.ts';
import type { SortedFile } from '../../../src/io/sorting/index.ts';
import type { SortReply } from '../../../src/io/sorting/messages.ts';

/** Stands in for a worker: keeps what it is asked, answers when the test says so. */
interface FakePort {
  readonly asked: string[];
  readonly events: PortEvents<SortedFile>;
  ended: boolean;
}

function fakePool(options: { workers: number; budgetMb?: number; patienceMs?: (share: number) => number }) {
  const ports: FakePort[] = [];
  const pool = new Pool<string, SortedFile>({
    workers: options.workers,
    budgetMb: options.budgetMb ?? 100,
    ...(options.patienceMs && { patienceMs: options.patienceMs }),
    open: (events) => {
      const port: FakePort = { asked: [], events, ended: false };
      ports.push(port);
      return { post: (request) => void port.asked.push(request), end: () => (port.ended = true) };
    },
  });
  const ask = (
    request: string,
    needsMb = 1,
  ): { readonly replies: SortReply[]; readonly done: Promise<string> } => {
    const replies: SortReply[] = [];
    const done = new Promise<string>((resolve) => {
      const onReply = (reply: SortReply): void => {
        replies.push(reply);
        if (reply.kind === 'done') resolve(`${request} done`);
      };
      pool.ask({
        request,
        name: request,
        needsMb,
        onReply,
        reject: (error) => resolve(`${error.reason}: ${error.message}`),
      });
    });
    return { replies, done };
  };
  return { pool, ports, ask };
}

const DONE: SortReply = {
  kind: 'done',
  file: { durationSec: 1, remarks: [], attempts: [], reason: 'Nobody plays.' },
};

describe('a pool of workers', () => {
  it('gives each worker one file at a time, in the order asked, and each file its own answer', async () => {
    const { ports, ask } = fakePool({ workers: 2 });
    const jobs = ['a', 'b', 'c'].map((name) => ask(name));
    expect(ports.map(({ asked }) => asked)).toEqual([['a'], ['b']]);
    ports[1]!.events.reply({ kind: 'progress', share: 0.5 });
    ports[1]!.events.reply(DONE);
    expect(ports.map(({ asked }) => asked)).toEqual([['a'], ['b', 'c']]);
    ports[0]!.events.reply({
      kind: 'failed',
      reason: 'unreadable',
      trouble: { trouble: 'within', name: 'a', of: { trouble: 'no-wav' } },
    });
    ports[1]!.events.reply(DONE);
    expect(await Promise.all(jobs.map(({ done }) => done))).toEqual([
      'unreadable: a: It is no WAV file. Decode it first, or convert it to WAV.',
      'b done',
      'c done',
    ]);
    expect(jobs.map(({ replies }) => replies.length)).toEqual([0, 2, 1]);
  });

  it('starts no worker that is not needed', () => {
    const { ports, ask } = fakePool({ workers: 4 });
    void ask('a');
    expect(ports).toHaveLength(1);
  });

  it('does files that need much memory one after the other, and one that needs more than there is alone', () => {
    const { ports, ask } = fakePool({ workers: 3, budgetMb: 100 });
    void ask('small', 10);
    void ask('large', 500);
    void ask('small too', 10);
    expect(ports.map(({ asked }) => asked)).toEqual([['small']]);
    ports[0]!.events.reply(DONE);
    expect(ports.map(({ asked }) => asked)).toEqual([['small', 'large']]);
    ports[0]!.events.reply(DONE);
    expect(ports.flatMap(({ asked }) => asked)).toEqual(['small', 'large', 'small too']);
  });

  it('ends all workers at once when called off, says so of every file, hears no more of them, and goes on with new ones', async () => {
    const { pool, ports, ask } = fakePool({ workers: 1 });
    const jobs = [ask('a'), ask('b')];
    pool.cancel({ trouble: 'sorting-called-off' });
    expect(ports[0]!.ended).toBe(true);
    expect(await Promise.all(jobs.map(({ done }) => done))).toEqual([
      'cancelled: The sorting was called off.',
      'cancelled: The sorting was called off.',
    ]);
    const next = ask('c');
    ports[0]!.events.reply(DONE);
    expect(next.replies).toEqual([]);
    expect(ports[1]!.asked).toEqual(['c']);
    ports[1]!.events.reply(DONE);
    expect(await next.done).toBe('c done');
  });

  it('fails the file of a worker that died, and sets another worker to the next', async () => {
    const { ports, ask } = fakePool({ workers: 1 });
    const jobs = [ask('a'), ask('b')];
    ports[0]!.events.died({ trouble: 'sorting-not-loaded' });
    expect(await jobs[0]!.done).toBe(
      'failed: The listening part of the page could not be loaded, or ran out of memory.',
    );
    expect(ports[1]!.asked).toEqual(['b']);
    ports[1]!.events.reply(DONE);
    expect(await jobs[1]!.done).toBe('b done');
  });

  it('gives up a file of which nothing is heard any more, ends its worker, and goes on with the next', async () => {
    const { ports, ask } = fakePool({ workers: 1, patienceMs: (share) => (share < 0.9 ? 20 : 1e9) });
    const jobs = [ask('endless.webm'), ask('b')];
    ports[0]!.events.reply({ kind: 'progress', share: 0.2 });
    expect(await jobs[0]!.done).toMatch(/^unreadable: endless\.webm: It came to no end and was given up/);
    expect(ports[0]!.ended).toBe(true);
    expect(ports[1]!.asked).toEqual(['b']);
    ports[1]!.events.reply(DONE);
    expect(await jobs[1]!.done).toBe('b done');
  });

  it('is as patient as is right for how far a worker is, anew at each sign of it', async () => {
    const asked: number[] = [];
    const { ports, ask } = fakePool({ workers: 1, patienceMs: (share) => (asked.push(share), 1e6) });
    const job = ask('long');
    for (const share of [0.1, 0.1, 0.5, 0.9]) ports[0]!.events.reply({ kind: 'progress', share });
    ports[0]!.events.reply({ kind: 'decode' });
    expect(asked).toEqual([0, 0.1, 0.1, 0.5, 0.9, 0]);
    ports[0]!.events.reply(DONE);
    expect(await job.done).toBe('long done');
    expect(PATIENCE_MS(0.9)).toBeGreaterThan(PATIENCE_MS(0.89));
  });
});
