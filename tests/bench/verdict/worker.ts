/** Plays and judges the attempts that the bench sends, one by one. */
import { seriesAttempt, verdictAttempt } from './attempts.ts';
import type { Source } from './attempts.ts';
import { judge } from './judge.ts';

export interface VerdictTask {
  readonly series: boolean;
  readonly index: number;
  readonly source: Source;
}

process.on('message', ({ series, index, source }: VerdictTask) => {
  const attempt = series ? seriesAttempt(index) : verdictAttempt(index, source);
  void judge(attempt, index).then((record) => process.send?.(record));
});
