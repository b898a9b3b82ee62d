/** Two attempts side by side. */
export const COMPARE = {
  title: 'Compare',
  hint: 'with another attempt of this exercise, or with the best so far',
  with: 'Compare with',
  best: (name: string) => `the best so far: ${name}`,
  attempt: (number: number, name: string) => `attempt ${number}: ${name}`,
  this: 'this attempt',
  other: 'the other',
  strings:
    'Two strings, the other attempt above, this one below. Ticks are the even places; each pearl stands as early or late ' +
    'as it came.',
  same: 'No difference worth telling.',
  measure: 'Measure',
  change: 'Change',
  notMeasured: 'not measured',
  mistakes: 'Wrong, missed and extra notes',
  fewerMistakes: (before: number, after: number) => `Fewer notes went wrong: ${before} before, ${after} now.`,
  moreMistakes: (before: number, after: number) => `More notes went wrong: ${before} before, ${after} now.`,
  moreEven: (before: string, after: string) => `More even in time: ${before} before, ${after} now.`,
  lessEven: (before: string, after: string) => `Less even in time: ${before} before, ${after} now.`,
  crossingBetter: (note: string, step: number, before: string, after: string) =>
    `The crossing into ${note}, note ${step}, comes nearer its time: ${before} before, ${after} now.`,
  crossingWorse: (note: string, step: number, before: string, after: string) =>
    `The crossing into ${note}, note ${step}, comes later: ${before} before, ${after} now.`,
  faster: (before: string, after: string) => `Faster: ${before} before, ${after} now.`,
  slower: (before: string, after: string) => `Slower: ${before} before, ${after} now.`,
  louderEven: (before: string, after: string) => `More even in loudness: ${before} before, ${after} now.`,
  louderUneven: (before: string, after: string) => `Less even in loudness: ${before} before, ${after} now.`,
  noteNow: (note: string, step: number) => `${note}, note ${step}, is now right.`,
  noteNoMore: (note: string, step: number) => `${note}, note ${step}, was right before.`,
};
