import { buildExercise } from '../../src/engine/exercise/index.ts';
import type { ExerciseChoice } from '../../src/engine/exercise/index.ts';
import { placeMicrophone } from './home/index.ts';
import { HOME_DEFAULTS } from './home/knobs.ts';
import type { HomeKnobs } from './home/knobs.ts';
import { openPiano } from './piano/index.ts';
import type { PianoName } from './piano/index.ts';
import { soundStrokes } from './piano/play.ts';
import { createRandom } from './random.ts';
import { STUDENT_DEFAULTS } from './student/knobs.ts';
import type { StudentKnobs } from './student/knobs.ts';
import { perform } from './student/perform.ts';
import type { Keystroke, Missed, Performance } from './student/types.ts';
import type { Hand } from '../../src/engine/exercise/index.ts';
import type { ExtraKind } from '../../src/engine/match/types.ts';

export type { HomeKnobs, NoiseKind } from './home/knobs.ts';
export { NO_MISTAKES } from './student/knobs.ts';
export type { MistakeCounts, StudentKnobs } from './student/knobs.ts';
export type { PianoName } from './piano/index.ts';
export type { Keystroke, Missed, Performance } from './student/types.ts';

/** What to render. Everything not said is the tidy default. */
export interface RenderSpec {
  readonly seed: number;
  readonly piano: PianoName;
  readonly exercise: ExerciseChoice;
  readonly student?: Partial<StudentKnobs>;
  readonly home?: Partial<HomeKnobs>;
}

/** A key that was struck, as it really was. */
export interface TrueNote {
  /** moment of the attack: 1 ms RMS envelope above −30 dB of its greatest value (see piano/attack.ts) */
  readonly timeSec: number;
  readonly midi: number;
  /** this key against the piano's own tuning, cents */
  readonly cents: number;
  /**
   * mean power of this note alone over its first 100 ms as it arrives, through room and microphone, without noise and
   * automatic level control; 0 dB = full-scale sine
   */
  readonly levelDb: number;
  /** how hard the key was struck, 1..127, 0.26 dB a step; the room has no part in it */
  readonly velocity: number;
  /** the damper falls; null: undamped key, or pedal down */
  readonly releaseSec: number | null;
  readonly hand: Hand;
  readonly step: number | null;
  readonly verdict: 'correct' | 'wrong' | 'extra';
  readonly wantedMidi?: number;
  readonly extraKind?: ExtraKind;
}

/** All that is known of a render. */
export interface Truth {
  readonly exercise: ExerciseChoice;
  readonly notes: readonly TrueNote[];
  readonly missed: readonly Missed[];
  /** of the first partial of A4 against 440 Hz */
  readonly tuningCents: number;
  readonly seed: number;
  readonly piano: PianoName;
  readonly student: StudentKnobs;
  readonly home: HomeKnobs;
}

export interface Rendered {
  readonly channels: readonly Float32Array[];
  readonly sampleRateHz: number;
  readonly truth: Truth;
}

export const SAMPLE_RATE_HZ = 44_100;

/** Exercise, student, home and seed → sound and truth. The same spec gives the same samples. */
export async function render(spec: RenderSpec): Promise<Rendered> {
  const student = { ...STUDENT_DEFAULTS, ...spec.student };
  const random = createRandom(spec.seed);
  const performance = perform(buildExercise(spec.exercise), student, random.fork('student'));
  return renderPerformance(performance, { ...spec, student });
}

/** The same for keys struck as a test wants them, with `spec.student` only noted in the truth. */
export async function renderPerformance(performance: Performance, spec: RenderSpec): Promise<Rendered> {
  const home = { ...HOME_DEFAULTS, ...spec.home };
  const random = createRandom(spec.seed);
  const microphone = placeMicrophone(home, SAMPLE_RATE_HZ, random.fork('left'));
  const played = await soundStrokes(
    performance,
    openPiano(spec.piano),
    home,
    microphone,
    random.fork('piano'),
  );
  const first = microphone.record(played.dry, played.playingSec);
  const peak = first.reduce((most, value) => Math.max(most, Math.abs(value)), 1e-9);
  const gain = 10 ** ((home.clipDb ?? home.peakDb) / 20) / peak;
  const second = (): Float64Array =>
    placeMicrophone(home, SAMPLE_RATE_HZ, random.fork('right')).record(played.dry, played.playingSec);
  const channels = channelsOf(recorded(first, gain), () => recorded(second(), gain), home);
  const gainDb = 20 * Math.log10(gain);
  return {
    channels,
    sampleRateHz: SAMPLE_RATE_HZ,
    truth: {
      exercise: spec.exercise,
      notes: performance.strokes.map((stroke, index) =>
        trueNote(stroke, {
          cents: played.strayCents[index]!,
          levelDb: played.levelsDb[index]! + gainDb,
          releaseSec: played.dampedSec[index]!,
        }),
      ),
      missed: performance.missed,
      tuningCents: home.tuningCents,
      seed: spec.seed,
      piano: spec.piano,
      student: { ...STUDENT_DEFAULTS, ...spec.student },
      home,
    },
  };
}

/** Signal at the recording's gain, cut at full scale. */
function recorded(signal: Float64Array, gain: number): Float32Array {
  const channel = new Float32Array(signal.length);
  for (let index = 0; index < signal.length; index++)
    channel[index] = Math.min(Math.max(signal[index]! * gain, -1), 1);
  return channel;
}

function trueNote(
  { timeSec, midi, velocity, hand, step, verdict, wantedMidi, extraKind }: Keystroke,
  sounded: Pick<TrueNote, 'cents' | 'levelDb' | 'releaseSec'>,
): TrueNote {
  return {
    timeSec,
    midi,
    velocity,
    ...sounded,
    hand,
    step,
    verdict,
    ...(wantedMidi === undefined ? {} : { wantedMidi }),
    ...(extraKind === undefined ? {} : { extraKind }),
  };
}

function channelsOf(
  left: Float32Array,
  secondMicrophone: () => Float32Array,
  home: HomeKnobs,
): readonly Float32Array[] {
  switch (home.channels) {
    case 'mono':
      return [left];
    case 'right-only':
      return [new Float32Array(left.length), left];
    case 'opposed':
      return [left, left.map((value) => -value)];
    case 'stereo':
      return [left, secondMicrophone()];
  }
}
