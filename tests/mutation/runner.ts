/** Runs a room's tests again and again for `mutate.ts`, in a process of its own that may be ended where a change never ends. */
import { createVitest } from 'vitest/node';
import type { Vitest } from 'vitest/node';

/** What `mutate.ts` asks for: the room's tests, up to the first failure, after `changed` was written anew. */
export interface Asked {
  readonly changed: string;
}
export interface Answer {
  readonly failed: boolean;
  /** the first test that failed */
  readonly by: string;
}

const [root, room] = process.argv.slice(2);
let last = '';
const vitest: Vitest = await createVitest('test', {
  root: root!,
  watch: false,
  project: ['unit'],
  bail: 1,
  reporters: [{}],
  maxWorkers: 2,
  isolate: false,
});
await vitest.standalone();
process.on('message', (asked: Asked) => void run(asked));
process.send?.('ready');

async function run({ changed }: Asked): Promise<void> {
  // The last one is as it was again.
  for (const file of [last, changed]) vitest.invalidateFile(file);
  last = changed;
  const specifications = await vitest.globTestSpecifications([room!]);
  const { testModules, unhandledErrors } = await vitest.runTestSpecifications(specifications, true);
  const failed = testModules.find((module) => !module.ok());
  const test =
    failed === undefined
      ? undefined
      : [...failed.children.allTests('failed')].map(({ fullName }) => fullName)[0];
  const answer: Answer = {
    failed: failed !== undefined || unhandledErrors.length > 0 || testModules.length === 0,
    by: test ?? failed?.relativeModuleId ?? '',
  };
  process.send?.(answer);
}
