import { assessHeard, listenAndKeep, recogniseFrom } from '../../../src/engine/index.ts';
import type { Assessment, Heard, Report } from '../../../src/engine/index.ts';
import { renderPerformance } from '../../support/render.ts';
import { createRandom } from '../../support/random.ts';
import type { Truth } from '../../support/render.ts';
import { DB_PER_VELOCITY } from '../../support/student/perform.ts';
import { levelResidualsDb } from '../measure-score.ts';
import { matchToTruth } from '../note-score.ts';
import { tallyVerdicts } from '../verdict-score.ts';
import type { VerdictTally } from '../verdict-score.ts';
import type { Source, VerdictAttempt } from './attempts.ts';
import { overheard } from './ear-model.ts';
import { figureErrors } from './figures.ts';
import type { FigureError } from './figures.ts';
import { kindOf } from './kinds.ts';
import type { Kind } from './kinds.ts';
import { isComplete, toldBy } from './statements.ts';
import { truthOf } from './truth.ts';

/** Everything that the tables need of one attempt; plain data, so that helpers can send it. */
export interface VerdictRecord {
  readonly index: number;
  readonly scenario: string;
  readonly source: Source;
  readonly together: boolean;
  readonly gravest: Kind | null;
  /** what was said, sentence and list, by code; empty: there was no report */
  readonly said: readonly string[];
  /** what the sentence begins with that accuses of something */
  readonly first: Kind | null;
  /** said anywhere and not true */
  readonly accused: readonly Kind[];
  /** codes that may not be said here */
  readonly forbidden: readonly string[];
  readonly sentence: string;
  /** notes wrong, left out or too many, as played */
  readonly faults: number;
  /** … that the report lists */
  readonly faultsListed: number;
  /** every fault that the report lists is counted in the words, has its line in the list and its mark on the string */
  readonly complete: boolean;
  readonly falseNotes: { readonly wrong: number; readonly missed: number; readonly extra: number };
  readonly figures: readonly FigureError[];
  /** one hand alone, recognised: the hand said and how surely */
  readonly hand: { readonly right: boolean; readonly confidence: number } | null;
  /** heard − true level of each note, straight line over pitch taken out: against the sound as it arrives, against the blow */
  readonly levelsDb: readonly number[];
  readonly blowsDb: readonly number[];
}

interface Listened {
  readonly heard: Heard;
  readonly truth: Truth;
  readonly assessment: Assessment;
}

/** Plays an attempt, and those before it, to the engine → what it said, against what is true. */
export async function judge(attempt: VerdictAttempt, index: number): Promise<VerdictRecord> {
  const { scenario, source, asked } = attempt;
  const earlier: Report[] = [];
  let last: Listened | null = null;
  for (const turn of attempt.played.keys()) {
    last = await listenTo(attempt, turn, [...earlier]);
    if (last.assessment.kind === 'report') earlier.push(last.assessment.report);
  }
  const { heard, truth, assessment } = last!;
  const report = assessment.kind === 'report' ? assessment.report : null;
  const said = report === null ? [] : toldBy(report).codes;
  const kinds = said.map(kindOf).filter((kind) => kind !== null);
  const allowed = [...(scenario.gravest === null ? [] : [scenario.gravest]), ...scenario.also];
  const tally = tallyVerdicts(report, truth);
  const pairs = matchToTruth(heard.notes, truth.notes, 50);
  const against = (of: (note: Truth['notes'][number]) => number): readonly number[] =>
    levelResidualsDb(
      pairs.map((pair) => {
        const note = truth.notes[pair.truth]!;
        return { midi: note.midi, errorDb: heard.notes[pair.heard]!.levelDb - of(note) };
      }),
    );
  return {
    index,
    scenario: scenario.name,
    source,
    together: asked.hands === 'together',
    gravest: scenario.gravest,
    said,
    first: kinds[0] ?? null,
    accused: [...new Set(kinds)].filter((kind) => !allowed.includes(kind)),
    forbidden: said.filter((code) => scenario.never?.includes(code)),
    sentence: report?.words.verdict ?? '',
    ...faultsIn(report, truth, tally),
    figures: report === null || attempt.played.length > 1 ? [] : figureErrors(report, truth, attempt.shaped),
    hand: handSaid(heard, attempt),
    levelsDb: against(({ levelDb }) => levelDb),
    blowsDb: against(({ velocity }) => velocity * DB_PER_VELOCITY),
  };
}

async function listenTo(
  { source, played, asked }: VerdictAttempt,
  turn: number,
  earlier: readonly Report[],
): Promise<Listened> {
  const { performance, spec } = played[turn]!;
  if (source === 'notes') {
    const truth = truthOf(played[turn]!);
    const heard = overheard(truth, createRandom(spec.seed + turn).fork('ear'));
    return { truth, heard, assessment: assessHeard(heard, asked, { earlier, sitting: earlier.length }) };
  }
  const rendered = await renderPerformance(performance, spec);
  const { heard, sound } = listenAndKeep(rendered);
  return {
    truth: rendered.truth,
    heard,
    assessment: assessHeard(heard, asked, { earlier, sitting: earlier.length }, sound),
  };
}

function faultsIn(
  report: Report | null,
  truth: Truth,
  tally: VerdictTally,
): Pick<VerdictRecord, 'faults' | 'faultsListed' | 'complete' | 'falseNotes'> {
  const extras = Object.values(tally.extras);
  return {
    faults: tally.wrong + tally.missed + extras.reduce((sum, { there }) => sum + there, 0),
    faultsListed: tally.wrongFound + tally.missedFound + extras.reduce((sum, { found }) => sum + found, 0),
    complete: report !== null && isComplete(report),
    falseNotes: {
      wrong: tally.rightCalledWrong,
      missed: report === null ? 0 : missedFalsely(report, truth),
      extra: tally.falseExtras,
    },
  };
}

/** Notes called missed that were struck. */
function missedFalsely({ missed, exercise }: Report, truth: Truth): number {
  return missed.filter(({ step, midi, hand }) =>
    truth.notes.some(
      (note) =>
        note.step === step &&
        note.hand === hand &&
        note.verdict === 'correct' &&
        (note.midi - midi - 12 * (exercise.octaveShift - truth.student.octaveShift)) % 12 === 0,
    ),
  ).length;
}

function handSaid(heard: Heard, { asked }: VerdictAttempt): VerdictRecord['hand'] {
  if (asked.hands === 'together') return null;
  const { choice, confidence } = recogniseFrom(heard);
  if (choice === null || choice.form !== asked.form || choice.key !== asked.key) return null;
  return { right: choice.hands === asked.hands, confidence };
}
