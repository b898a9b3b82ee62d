import type { Microphone } from '../home/index.ts';
import type { HomeKnobs } from '../home/knobs.ts';
import type { Random } from '../random.ts';
import { DB_PER_VELOCITY } from '../student/perform.ts';
import type { Performance } from '../student/types.ts';
import type { KeySample, Piano } from './index.ts';
import { addStrike } from './strike.ts';

const SAMPLE_RATE_HZ = 44_100;
/** All samples are brought to this RMS (first 300 ms) at the middle velocity. */
const COMMON_RMS = 0.05;
const MIDDLE_VELOCITY = 64;
const LEVEL_WINDOW_SEC = 0.1;
/** Room for what is recorded before the attack. */
const PREROLL_SEC = 0.05;
/** A string struck again is stopped by its own hammer within this time. */
const RESTRIKE_SEC = 0.03;
/** The top octave and a half has no dampers. */
const FIRST_UNDAMPED_KEY = 91;

export interface Played {
  readonly dry: Float64Array;
  /** of each stroke alone at the microphone, dB (0 dB = full-scale sine), before the recording's gain */
  readonly levelsDb: readonly number[];
  /** of each stroke's key against the piano's own tuning (its stretch included) */
  readonly strayCents: readonly number[];
  /** when each stroke is damped; null: never */
  readonly dampedSec: readonly (number | null)[];
  /** from the first onset to a little after the last */
  readonly playingSec: { readonly from: number; readonly to: number };
}

/** Time in which a damper takes 40 dB away: 300 ms at A0 falling to 50 ms at the last damped key. */
export function damperSec(midi: number): number | null {
  if (midi >= FIRST_UNDAMPED_KEY) return null;
  return 0.3 * (0.05 / 0.3) ** ((midi - 21) / (FIRST_UNDAMPED_KEY - 1 - 21));
}

/** Octave stretch against equal temperament, cents, 0 at A4: −30 in the bottom octave, +30 in the top (Railsback; memory). */
export function stretchCents(midi: number): number {
  return 30 * ((midi - 69) / 39) ** 3 * (midi < 69 ? (39 / 48) ** 3 : 1);
}

/** Keys struck → the sound of this piano alone, and what is true of each stroke. */
export async function soundStrokes(
  performance: Performance,
  piano: Piano,
  home: HomeKnobs,
  microphone: Microphone,
  random: Random,
): Promise<Played> {
  const { strokes, durationSec, pedal } = performance;
  const dry = new Float64Array(Math.ceil(durationSec * SAMPLE_RATE_HZ));
  const strays = Array.from({ length: 128 }, () =>
    Math.min(Math.max(random.normal(home.scatterCents), -10), 10),
  );
  const voiced = random.fork('voicing');
  const voicingDb = Array.from({ length: 128 }, () => voiced.normal(home.keyLevelSdDb ?? 0));
  const levelsDb: number[] = [];
  const dampedSec: (number | null)[] = [];
  const struckBefore = new Map<number, number>();
  const levelOf = levelsAt(microphone);
  for (const [index, stroke] of strokes.entries()) {
    const { midi, velocity, timeSec } = stroke;
    const strike = struckBefore.get(midi) ?? 0;
    struckBefore.set(midi, strike + 1);
    const key = await piano.sampleFor(midi, velocity, strike);
    const wantedCents = home.tuningCents + strays[midi]! + home.stretch * stretchCents(midi);
    const shiftCents = 100 * (midi - key.midi) + wantedCents - key.cents;
    const blowDb = (velocity - MIDDLE_VELOCITY) * DB_PER_VELOCITY;
    const gain = (COMMON_RMS / key.rms) * 10 ** ((blowDb + voicingDb[midi]!) / 20);

    const again = strokes.slice(index + 1).find((later) => later.midi === midi)?.timeSec;
    const usualSec = damperSec(midi);
    const lengthSec = usualSec === null ? null : usualSec * (home.damperTimes ?? 1);
    const atSec = pedal === 'held' || lengthSec === null ? null : stroke.releaseSec;
    const damped =
      again !== undefined && (atSec === null || again - 0.005 < atSec)
        ? { atSec: again - 0.005, lengthSec: RESTRIKE_SEC }
        : atSec === null || lengthSec === null
          ? null
          : { atSec, lengthSec };
    dampedSec.push(atSec);
    addStrike(dry, SAMPLE_RATE_HZ, key, { timeSec, shiftCents, gain, damped });

    levelsDb.push(levelOf(key, midi, shiftCents) + 20 * Math.log10(gain));
  }
  const from = strokes[0]?.timeSec ?? 0;
  const to = Math.min((strokes.at(-1)?.timeSec ?? durationSec) + 0.3, durationSec);
  const strayCents = strokes.map(({ midi }) => strays[midi]!);
  return { dry, levelsDb, strayCents, dampedSec, playingSec: { from, to } };
}

/** Recorded key, as which key, at what shift → its level alone at this microphone at gain 1, dB; each measured once. */
function levelsAt(microphone: Microphone): (key: KeySample, midi: number, shiftCents: number) => number {
  const known: { key: KeySample; midi: number; levelDb: number }[] = [];
  return (key, midi, shiftCents) => {
    const before = known.find((other) => other.key === key && other.midi === midi);
    if (before) return before.levelDb;
    const alone = new Float64Array(Math.ceil((LEVEL_WINDOW_SEC + PREROLL_SEC) * SAMPLE_RATE_HZ));
    addStrike(alone, SAMPLE_RATE_HZ, key, { timeSec: PREROLL_SEC, shiftCents, gain: 1, damped: null });
    const first = microphone.hear(alone).subarray(PREROLL_SEC * SAMPLE_RATE_HZ);
    const power = first.reduce((sum, value) => sum + value * value, 0) / first.length;
    const levelDb = 10 * Math.log10(2 * power + 1e-12);
    known.push({ key, midi, levelDb });
    return levelDb;
  };
}
