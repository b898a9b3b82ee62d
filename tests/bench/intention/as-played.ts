import type { Exercise, Intention } from '../../../src/engine/index.ts';
import { DB_PER_VELOCITY } from '../../support/student/perform.ts';
import type { Keystroke } from '../../support/student/types.ts';

/** A figure of an intention as it was truly played; null: it has none. */
export interface AsPlayed {
  /** mean of the long over that of the short, of pairs */
  readonly longToShort: number | null;
  /** growth from first to last by least squares, or the accents over the others, dB of the blow */
  readonly louderDb: number | null;
}

/** Strokes → what was played in fact, a player's own scatter included: straight from their moments and velocities, without the engine's formulas. */
export function asPlayed(
  strokes: readonly Keystroke[],
  { steps }: Pick<Exercise, 'steps'>,
  { rhythm, loudness }: Intention,
): AsPlayed {
  return {
    longToShort:
      rhythm === 'long-short' || rhythm === 'short-long'
        ? ratioOf(strokes, steps, rhythm === 'long-short')
        : null,
    louderDb: loudness === undefined ? null : louderDbOf(strokes, steps, loudness),
  };
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

function ratioOf(strokes: readonly Keystroke[], steps: Exercise['steps'], firstIsLong: boolean): number {
  const times = new Map<number, number>();
  for (const { step, timeSec } of strokes)
    if (step !== null) times.set(step, Math.min(times.get(step) ?? Infinity, timeSec));
  const lengths = { long: [] as number[], short: [] as number[] };
  for (const { step, copy } of steps) {
    const [from, to] = [times.get(step - 1), times.get(step)];
    const place = copy?.place ?? 0;
    if (place === 0 || from === undefined || to === undefined) continue;
    lengths[(place % 2 === 1) === firstIsLong ? 'long' : 'short'].push(to - from);
  }
  return mean(lengths.long) / mean(lengths.short);
}

function louderDbOf(
  strokes: readonly Keystroke[],
  steps: Exercise['steps'],
  loudness: NonNullable<Intention['loudness']>,
): number | null {
  const placed = strokes.flatMap(({ step, velocity }) =>
    step === null ? [] : [{ place: steps[step]!.copy?.place ?? 0, db: velocity * DB_PER_VELOCITY }],
  );
  const every = Number(/\d/.exec(loudness)?.[0] ?? 0);
  if (every > 0) {
    const of = (accent: boolean): number =>
      mean(placed.filter(({ place }) => (place % every === 0) === accent).map(({ db }) => db));
    return of(true) - of(false);
  }
  if (loudness !== 'growing' && loudness !== 'fading') return null;
  const centre = { place: mean(placed.map(({ place }) => place)), db: mean(placed.map(({ db }) => db)) };
  const across = placed.reduce((sum, { place }) => sum + (place - centre.place) ** 2, 0);
  const along = placed.reduce((sum, { place, db }) => sum + (place - centre.place) * (db - centre.db), 0);
  const last = Math.max(...steps.map(({ copy }) => copy?.place ?? 0));
  return (loudness === 'growing' ? 1 : -1) * (along / across) * last;
}
