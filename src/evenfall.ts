#!/usr/bin/env node
import { version } from '../package.json';
import { run } from './terminal/main.ts';

/** The command. It gets from here what stands below it: the pages that the ui writes. */
await run({
  version,
  writePage: async (review, language) =>
    (await import('./ui/review/page/in-node.ts')).reviewPage(review, language),
  writeSummary: async (pile) => (await import('./ui/review/pile/in-node.ts')).pilePage(pile),
});
