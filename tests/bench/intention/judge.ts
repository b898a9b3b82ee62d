import {
  assessHeard,
  buildExercise,
  learnPiano,
  listenAndKeep,
  mergePianos,
} from '../../../src/engine/index.ts';
import type { Assessment, PianoProfile } from '../../../src/engine/index.ts';
import type { Statement } from '../../../src/engine/report/words/said/index.ts';
import { createRandom } from '../../support/random.ts';
import { renderPerformance } from '../../support/render.ts';
import type { RenderSpec } from '../../support/render.ts';
import { STUDENT_DEFAULTS } from '../../support/student/knobs.ts';
import { perform } from '../../support/student/perform.ts';
import { homeOf } from '../attempts.ts';
import { heardAsPlayed } from '../truth-report.ts';
import { overheard } from '../verdict/ear-model.ts';
import { truthOf } from '../verdict/truth.ts';
import { begunIn } from './players.ts';
import type { PractisedAttempt } from './players.ts';
import type { Flaw } from './works.ts';

export type Practised = Extract<Statement, { readonly situation: 'practised' }>;

/** What came of one attempt at an intention. */
export interface PracticeRecord {
  readonly work: string;
  readonly flaw: Flaw | null;
  readonly outcome: Practised['outcome'] | 'no report';
  /** the repeats that were counted are those that were begun */
  readonly counted: boolean;
  /** blamed besides: situations with faults */
  readonly blamed: readonly string[];
  readonly lacks: readonly string[];
  /** told − played, of who does it well; null: not told, or there is none */
  readonly ratioError: number | null;
  readonly louderErrorDb: number | null;
  /** what was asked of touch or loudness could not be told, and was left so */
  readonly unsaid: boolean;
  readonly sentence: string;
}

/** Listens to an attempt, as a list of notes as they were played or with the ear's usual errors or rendered, with the intention known. */
export async function assessPractised(
  attempt: PractisedAttempt,
  source: 'exact' | 'notes' | 'dev' | 'test',
  before = BEFORE,
): Promise<Assessment> {
  const { performance, choice, intention, targetBpm, seed } = attempt;
  const home = homeOf(createRandom(seed));
  const spec: RenderSpec = { seed, piano: source === 'test' ? 'test' : 'dev', exercise: choice, home };
  const piano = attempt.work.pianoKnown ? await pianoOf(attempt, spec, source, before) : null;
  const options = { intention, targetBpm, piano };
  if (source === 'exact') return assessHeard(heardAsPlayed(truthOf({ performance, spec })), choice, options);
  if (source === 'notes')
    return assessHeard(
      overheard(truthOf({ performance, spec }), createRandom(seed).fork('ear')),
      choice,
      options,
    );
  const { heard, sound } = listenAndKeep(await renderPerformance(performance, spec));
  return assessHeard(heard, choice, options, sound);
}

/** Attempts at the whole before it, on the same piano and in the same room, from which its keys are known. */
export const BEFORE = 3;

async function pianoOf(
  { choice, seed }: PractisedAttempt,
  spec: RenderSpec,
  source: 'exact' | 'notes' | 'dev' | 'test',
  before: number,
): Promise<PianoProfile | null> {
  let piano: PianoProfile | null = null;
  for (let turn = 0; turn < before; turn++) {
    const random = createRandom(seed).fork(`before ${turn}`);
    const performance = perform(buildExercise(choice), STUDENT_DEFAULTS, random);
    const heard =
      source === 'dev' || source === 'test'
        ? listenAndKeep(await renderPerformance(performance, spec)).heard
        : overheard(truthOf({ performance, spec }), random.fork('ear'));
    const learnt = learnPiano(heard);
    if (learnt !== null) piano = mergePianos(piano, learnt);
  }
  return piano;
}

/** What was said against what was done. */
export function recordOf(attempt: PractisedAttempt, assessment: Assessment): PracticeRecord {
  const report = assessment.kind === 'report' ? assessment.report : null;
  const statements = report?.words.said?.statements ?? [];
  const told = statements.find((one): one is Practised => one.situation === 'practised');
  const { work, flaw } = attempt;
  return {
    work: work.name,
    flaw,
    outcome: told?.outcome ?? 'no report',
    counted: told !== undefined && told.repeats === begunIn(attempt),
    blamed: statements.filter(({ faults }) => faults > 0).map(({ situation }) => situation),
    lacks: told?.lacks.map(({ kind }) => kind) ?? [],
    ratioError: flaw === null ? errorOf(told?.longToShort?.value, attempt.played.longToShort) : null,
    louderErrorDb: flaw === null ? errorOf(told?.loudness?.db, attempt.played.louderDb) : null,
    unsaid: told?.touch?.outcome === 'untold' || told?.loudness?.outcome === 'untold',
    sentence: report?.words.verdict ?? '',
  };
}

const errorOf = (told: number | undefined, played: number | null): number | null =>
  told === undefined || played === null ? null : told - played;

/** What must be said of each flaw: one of these, as a lack or as a fault. */
const SAYS: Readonly<Record<Flaw, readonly string[]>> = {
  'wrong-note': ['times', 'wrong-notes', 'signature', 'leading-note', 'inner-note', 'missed-notes', 'length'],
  'too-few': ['times', 'length'],
  'too-fast': ['tempo'],
  'the-whole': ['whole'],
  'even-instead': ['rhythm', 'holds'],
  turned: ['rhythm'],
  'other-touch': ['touch'],
  'other-loudness': ['loudness'],
  stop: ['stopped', 'late-note', 'uneven', 'change-hesitates', 'times', 'crossing-late'],
};

/** Whether somebody who did not do it was told so, and why. */
export function isTold({ flaw, outcome, lacks, blamed }: PracticeRecord): boolean {
  if (flaw === null) return outcome === 'done';
  return outcome !== 'done' && [...lacks, ...blamed].some((one) => SAYS[flaw].includes(one));
}
