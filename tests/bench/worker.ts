/** Renders and assesses the attempts that the bench sends, one by one. */
import { render } from '../support/render.ts';
import type { PianoName } from '../support/render.ts';
import { assessAttempt } from './assess-attempt.ts';
import { attemptOf } from './attempts.ts';
import type { AttemptSet, ChordSet } from './attempts.ts';
import { CHORD_SETS, chordAttemptOf } from './chord-attempts.ts';
import { CODECS, throughCodec } from './codec.ts';

export interface Task {
  readonly set: AttemptSet;
  readonly piano: PianoName;
  readonly index: number;
  /** see assessAttempt */
  readonly ideal: boolean;
}

process.on('message', ({ set, piano, index, ideal }: Task) => {
  const attempt = isChordSet(set) ? chordAttemptOf(set, piano, index) : attemptOf(set, piano, index);
  void render(attempt.spec).then((rendered) => {
    const sound = attempt.hardship in CODECS ? throughCodec(rendered, attempt.hardship) : rendered;
    process.send?.(assessAttempt(attempt, index, { ...sound, truth: rendered.truth }, ideal));
  });
});

function isChordSet(set: AttemptSet): set is ChordSet {
  return CHORD_SETS.some((one) => one === set);
}
