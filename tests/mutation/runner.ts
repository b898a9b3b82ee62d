/** Runs a room's tests again and again for `mutate.ts`, in a process of its own that may be ended where a change never ends. */
import { BaseSequencer, createVitest } from 'vitest/node';
import type { TestSpecification, Vitest } from 'vitest/node';

/** What `mutate.ts` asks for: the room's tests, up to the first failure, after `changed` was written anew. */
export interface Asked {
  readonly changed: string;
}
export interface Answer {
  readonly failed: boolean;
  /** the first test that failed */
  readonly by: string;
}

const [root, ...rooms] = process.argv.slice(2);
let last = '';
/** how long each file of tests took when it was last run to its end, by path */
const tookMs = new Map<string, number>();
const costOf = (path: string): number => tookMs.get(path) ?? 0;

/** Quickest first: most changes are noticed by many tests, and one is enough. */
class QuickestFirst extends BaseSequencer {
  override sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    return Promise.resolve(files.sort((a, b) => costOf(a.moduleId) - costOf(b.moduleId)));
  }
}

// What the project itself says goes before what is passed here, and this before both: each worker reads everything anew.
process.env['VITEST_MAX_WORKERS'] = '1';
const vitest: Vitest = await createVitest('test', {
  root: root!,
  watch: false,
  project: ['unit'],
  bail: 1,
  reporters: [{}],
  isolate: false,
  sequence: { sequencer: QuickestFirst },
});
await vitest.standalone();
process.on('message', (asked: Asked) => void run(asked));
// Who asked has ended: so do the workers.
process.on('disconnect', () => process.kill(-process.pid, 'SIGKILL'));
process.send?.('ready');

async function run({ changed }: Asked): Promise<void> {
  // The last one is as it was again.
  for (const file of [last, changed]) vitest.invalidateFile(file);
  last = changed;
  const specifications = await vitest.globTestSpecifications(rooms);
  const { testModules, unhandledErrors } = await vitest.runTestSpecifications(specifications, true);
  for (const module of testModules)
    if (module.ok()) tookMs.set(module.moduleId, module.diagnostic().duration);
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
