import { fork } from 'node:child_process';
import { resolve as resolvePath } from 'node:path';
import type { AttemptRecord } from './assess-attempt.ts';
import type { Task } from './worker.ts';

/** Shares the tasks out to workers, progress on stderr; results in the order of the tasks. */
export async function runAll(all: readonly Task[], workers: number): Promise<readonly AttemptRecord[]> {
  const results: AttemptRecord[] = [];
  let next = 0;
  let done = 0;
  const one = (): Promise<void> =>
    new Promise((resolve, reject) => {
      const worker = fork(resolvePath(import.meta.dirname, 'worker.ts'), { serialization: 'advanced' });
      let at = -1;
      const hand = (): void => {
        at = next++;
        if (at < all.length) worker.send(all[at]!);
        else worker.disconnect();
      };
      worker.on('message', (record: AttemptRecord) => {
        results[at] = record;
        done++;
        if (process.stderr.isTTY) process.stderr.write(`\r${done} of ${all.length} `);
        hand();
      });
      worker.on('error', reject);
      worker.on('exit', (code) => (code === 0 ? resolve() : reject(new Error(`worker ended with ${code}`))));
      hand();
    });
  await Promise.all(Array.from({ length: Math.min(workers, all.length) }, one));
  if (process.stderr.isTTY) process.stderr.write('\n');
  return results;
}
