import { buildExercise } from '../../../src/engine/exercise/index.ts';
import type { ExerciseChoice } from '../../../src/engine/exercise/index.ts';
import { learnPiano, listen, mergePianos } from '../../../src/engine/listen/index.ts';
import type { PianoProfile } from '../../../src/engine/listen/index.ts';
import { createRandom } from '../../support/random.ts';
import { renderPerformance } from '../../support/render.ts';
import type { PianoName } from '../../support/render.ts';
import { STUDENT_DEFAULTS } from '../../support/student/knobs.ts';
import { DB_PER_VELOCITY, perform } from '../../support/student/perform.ts';
import { homeOf } from '../attempts.ts';
import { levelResidualsDb } from '../measure-score.ts';
import { matchToTruth } from '../note-score.ts';

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

/** Errors of each note's loudness against the force of its blow, dB: with a straight line over pitch, and with each key's own level. */
export interface LoudnessErrors {
  readonly unknownDb: readonly number[];
  readonly knownDb: readonly number[];
}

/** One student at one piano in one room: the last of eleven attempts, heard by what the ten before it taught. */
export async function loudnessAtOnePiano(piano: PianoName, seed: number): Promise<LoudnessErrors> {
  const random = createRandom(seed);
  const home = { ...homeOf(random), keyLevelSdDb: random.uniform(1, 2.5) };
  let known: PianoProfile | null = null;
  for (const [turn, exercise] of SITTING.entries()) {
    const own = random.fork(`attempt ${turn}`);
    const student = {
      ...STUDENT_DEFAULTS,
      bpm: own.uniform(60, 110),
      velocity: own.uniform(55, 85),
      loudnessJitterDb: own.uniform(0.6, 1.5),
      endsDb: own.uniform(-2, 0),
    };
    const performance = perform(buildExercise(exercise), student, own.fork('student'));
    const rendered = await renderPerformance(performance, { seed, piano, exercise, student, home });
    const heard = listen(rendered);
    if (turn < SITTING.length - 1) {
      const learnt = learnPiano(heard);
      if (learnt !== null) known = mergePianos(known, learnt);
      continue;
    }
    const pairs = matchToTruth(heard.notes, rendered.truth.notes, 50).map((pair) => {
      const { midi, levelDb } = heard.notes[pair.heard]!;
      const blowDb = rendered.truth.notes[pair.truth]!.velocity * DB_PER_VELOCITY;
      return { midi, errorDb: levelDb - blowDb, key: known?.keys[midi]?.levelDb };
    });
    const aboveDb = pairs.flatMap(({ errorDb, key }) => (key === undefined ? [] : [errorDb - key.value]));
    const centre = aboveDb.reduce((sum, value) => sum + value, 0) / aboveDb.length;
    return {
      unknownDb: levelResidualsDb(pairs),
      knownDb: aboveDb.map((value) => value - centre),
    };
  }
  throw new Error('an empty sitting');
}
