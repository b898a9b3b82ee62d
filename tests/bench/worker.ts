/** Renders and assesses the attempts that the bench sends, one by one. */
import { assess, pianoAfter } from '../../src/engine/index.ts';
import type { Form, PianoProfile } from '../../src/engine/index.ts';
import { render } from '../support/render.ts';
import type { PianoName, RenderSpec } from '../support/render.ts';
import { assessAttempt } from './assess-attempt.ts';
import type { AttemptRecord } from './assess-attempt.ts';
import { attemptOf } from './attempts.ts';
import type { AttemptSet, ChordSet } from './attempts.ts';
import { aimAttemptOf } from './aim-attempts.ts';
import { CHORD_SETS, chordAttemptOf } from './chord-attempts.ts';
import { CODECS, throughCodec } from './codec.ts';

export interface Task {
  readonly set: AttemptSet;
  readonly piano: PianoName;
  readonly index: number;
  /** of the set forms: this one */
  readonly form?: Form;
  /** see assessAttempt */
  readonly ideal: boolean;
}

process.on('message', (task: Task) => {
  void record(task).then((made) => process.send?.(made));
});

async function record({ set, piano, index, form, ideal }: Task): Promise<AttemptRecord> {
  if (set === 'aims') {
    const attempt = aimAttemptOf(piano, index);
    const known = await pianoHeardBy(attempt.before);
    return assessAttempt(attempt, index, await render(attempt.spec), ideal, known);
  }
  const attempt = isChordSet(set) ? chordAttemptOf(set, piano, index) : attemptOf(set, piano, index, form);
  const rendered = await render(attempt.spec);
  const sound = attempt.hardship in CODECS ? throughCodec(rendered, attempt.hardship) : rendered;
  return assessAttempt(attempt, index, { ...sound, truth: rendered.truth }, ideal);
}

/** What attempts teach of their piano, one after the other. */
async function pianoHeardBy(specs: readonly RenderSpec[]): Promise<PianoProfile | null> {
  let piano: PianoProfile | null = null;
  for (const spec of specs)
    piano = pianoAfter(piano, assess(await render(spec), spec.exercise, { piano, learnHands: true }));
  return piano;
}

function isChordSet(set: AttemptSet): set is Exclude<ChordSet, 'aims'> {
  return CHORD_SETS.some((one) => one === set);
}
