/** Renders and assesses the attempts that the bench sends, one by one. */
import { render } from '../support/render.ts';
import type { PianoName } from '../support/render.ts';
import { assessAttempt } from './assess-attempt.ts';
import { attemptOf } from './attempts.ts';
import type { AttemptSet } from './attempts.ts';
import { throughCodec } from './codec.ts';

export interface Task {
  readonly set: AttemptSet;
  readonly piano: PianoName;
  readonly index: number;
  /** see assessAttempt */
  readonly ideal: boolean;
}

process.on('message', ({ set, piano, index, ideal }: Task) => {
  const attempt = attemptOf(set, piano, index);
  void render(attempt.spec).then((rendered) => {
    const sound = set === 'codec' ? throughCodec(rendered, attempt.hardship) : rendered;
    process.send?.(assessAttempt(attempt, index, { ...sound, truth: rendered.truth }, ideal));
  });
});
