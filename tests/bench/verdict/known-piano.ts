import { buildExercise } from '../../../src/engine/exercise/index.ts';
import type { ExerciseChoice } from '../../../src/engine/exercise/index.ts';
import { learnPiano, listen, mergePianos } from '../../../src/engine/listen/index.ts';
import type { Heard, PianoProfile } from '../../../src/engine/listen/index.ts';
import { assessHeard } from '../../../src/engine/index.ts';
import type { Report } from '../../../src/engine/index.ts';
import { mean, standardDeviation } from '../../../src/engine/base/statistics.ts';
import { createRandom } from '../../support/random.ts';
import { renderPerformance } from '../../support/render.ts';
import type { PianoName, Truth } from '../../support/render.ts';
import { STUDENT_DEFAULTS } from '../../support/student/knobs.ts';
import { DB_PER_VELOCITY, perform } from '../../support/student/perform.ts';
import { homeOf } from '../attempts.ts';
import { levelResidualsDb } from '../measure-score.ts';
import { matchToTruth } from '../note-score.ts';
import type { FigureError } from './figures.ts';

/** What a student plays on one piano before the attempt that is measured, and last that one. */
const SITTING: readonly ExerciseChoice[] = [
  { key: 'C major', form: 'scale', hands: 'right', octaves: 2 },
  { key: 'D major', form: 'arpeggio', hands: 'right', octaves: 2 },
  { key: 'F major', form: 'scale', hands: 'right', octaves: 2 },
  { key: 'G major', form: 'scale', hands: 'right', octaves: 2 },
  { key: 'A major', form: 'scale', hands: 'right', octaves: 2 },
  { key: 'Bb major', form: 'scale', hands: 'right', octaves: 2 },
  { key: 'E major', form: 'scale', hands: 'right', octaves: 2 },
  { key: 'C minor', form: 'scale', hands: 'right', octaves: 2 },
  { key: 'D minor', form: 'scale', hands: 'right', octaves: 2 },
  { key: 'Ab major', form: 'scale', hands: 'right', octaves: 2 },
  { key: 'C major', form: 'arpeggio', hands: 'right', octaves: 2 },
];

/** The known piano's figures, and errors of each note's loudness against the force of its blow, dB: about a straight line over pitch, and about each key's own level. */
export interface LoudnessErrors {
  readonly unknownDb: readonly number[];
  readonly knownDb: readonly number[];
  readonly figures: readonly FigureError[];
}

/** One student at one piano in one room: the last of eleven attempts, heard by what the ten before it taught; the figures of all that could be. */
export async function loudnessAtOnePiano(piano: PianoName, seed: number): Promise<LoudnessErrors> {
  const random = createRandom(seed);
  const home = { ...homeOf(random), keyLevelSdDb: random.uniform(1, 2.5) };
  const figures: FigureError[] = [];
  let known: PianoProfile | null = null;
  let last = { unknownDb: [] as readonly number[], knownDb: [] as readonly number[] };
  for (const [turn, exercise] of SITTING.entries()) {
    const own = random.fork(`attempt ${turn}`);
    const student = {
      ...STUDENT_DEFAULTS,
      bpm: own.uniform(60, 110),
      velocity: own.uniform(55, 85),
      loudnessJitterDb: own.uniform(0.6, 1.5),
      endsDb: own.uniform(-2, 0),
      thumbDb: own.uniform(-1, 4),
    };
    const performance = perform(buildExercise(exercise), student, own.fork('student'));
    const rendered = await renderPerformance(performance, { seed, piano, exercise, student, home });
    const heard = listen(rendered);
    last = noteErrors(heard, rendered.truth, known);
    const assessment = assessHeard(heard, exercise, { piano: known });
    if (assessment.kind === 'report') figures.push(...knownErrors(assessment.report, rendered.truth));
    const learnt = learnPiano(heard);
    if (learnt !== null) known = mergePianos(known, learnt);
  }
  return { ...last, figures };
}

function noteErrors(
  heard: Heard,
  truth: Truth,
  known: PianoProfile | null,
): Pick<LoudnessErrors, 'unknownDb' | 'knownDb'> {
  const pairs = matchToTruth(heard.notes, truth.notes, 50).map((pair) => {
    const { midi, levelDb } = heard.notes[pair.heard]!;
    const blowDb = truth.notes[pair.truth]!.velocity * DB_PER_VELOCITY;
    return { midi, errorDb: levelDb - blowDb, key: known?.keys[midi]?.levelDb };
  });
  const aboveDb = pairs.flatMap(({ errorDb, key }) => (key === undefined ? [] : [errorDb - key.value]));
  const centre = mean(aboveDb) ?? 0;
  return { unknownDb: levelResidualsDb(pairs), knownDb: aboveDb.map((value) => value - centre) };
}

/** Figures of loudness told against the keys' own levels, against the force of the blows. */
function knownErrors({ measures }: Report, truth: Truth): readonly FigureError[] {
  if (measures.keysKnown !== true) return [];
  const blowsDb = truth.notes.map(({ velocity }) => velocity * DB_PER_VELOCITY);
  const [figure, ought] = [measures.loudnessEvennessDb, standardDeviation(blowsDb)];
  if (ought === undefined || 'notMeasured' in figure) return [];
  const { value, plusMinus = 0 } = figure;
  return [{ name: 'loudness evenness, dB', error: value - ought, plusMinus }];
}
