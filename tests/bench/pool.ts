import { fork } from 'node:child_process';
import { resolve as resolvePath } from 'node:path';

/** Shares the tasks out to helpers that run `file` of this folder, progress on stderr; results in the order of the tasks. */
export async function runAll<Task extends object, Result>(
  file: string,
  all: readonly Task[],
  workers: number,
): Promise<readonly Result[]> {
  const results: Result[] = [];
  let next = 0;
  let done = 0;
  const one = (): Promise<void> =>
    new Promise((resolve, reject) => {
      const worker = fork(resolvePath(import.meta.dirname, file), { serialization: 'advanced' });
      let at = -1;
      const hand = (): void => {
        at = next++;
        if (at < all.length) worker.send(all[at]!);
        else worker.disconnect();
      };
      worker.on('message', (record: Result) => {
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
