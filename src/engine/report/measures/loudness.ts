import type { PianoProfile } from '../../listen/index.ts';
import { mean, standardDeviation } from '../../base/statistics.ts';
import { notMeasured } from './estimate.ts';
import type { Figure } from '../types.ts';
import { lineThrough } from './line.ts';
import { spreadWithoutNoise } from './noise.ts';
import type { Strike, StruckKey } from './strikes.ts';

/** A key's level, and what is left of it when a smooth line over pitch is taken out, dB. */
export interface Loudness {
  readonly step: number;
  readonly key: StruckKey;
  readonly levelDb: number;
  readonly aboveLineDb: number;
}

const LEAST_NOTES = 5;

/** A key of which so little is known is not known, ± in dB: four strikes. */
const KNOWN_DB = 1.5;

/**
 * What each key of this piano sounds like where the device stands, if all that were struck are known → by how much each stands out
 * from it, dB; undefined: not all are known.
 */
function aboveOwnKeys(keys: readonly StruckKey[], piano: PianoProfile | null): readonly number[] | undefined {
  const learnt = keys.map(({ played }) => piano?.keys[played.midi]?.levelDb);
  const above = keys.flatMap(({ played }, at) => {
    const level = learnt[at];
    return level === undefined || level.plusMinus > KNOWN_DB ? [] : [played.levelDb - level.value];
  });
  return above.length < keys.length ? undefined : above;
}

/**
 * Strikes → each right note's level less that of its key, where this piano's keys are known; else less a straight line over pitch fitted to the attempt, dB: a piano (and a room) sounds
 * unlike at its two ends, which is not the player's doing.
 */
export function loudnessOf(
  strikes: readonly Strike[],
  piano: PianoProfile | null = null,
): readonly Loudness[] {
  const keys = strikes.flatMap((strike) =>
    strike.notes.filter((key) => key.right).map((key) => ({ step: strike.step, key })),
  );
  const own = aboveOwnKeys(
    keys.map(({ key }) => key),
    piano,
  );
  const levels = own ?? keys.map(({ key }) => key.played.levelDb);
  const line = lineThrough(
    keys.map(({ key }) => key.expected.midi),
    levels,
  );
  const centre = mean(levels) ?? 0;
  return keys.map(({ step, key }, index) => ({
    step,
    key,
    levelDb: levels[index]!,
    // A swell to the top is the player's where the keys are known, and cannot be told from the piano's where they are not.
    aboveLineDb: (own === undefined ? line?.residuals[index] : undefined) ?? levels[index]! - centre,
  }));
}

/**
 * Loudness evenness: SD of the levels about that line, dB; a change is audible from about 0.7–1.2 dB (Slade et al. 2022,
 * piano tones). As it sounds here: the piano's own keys differ by some 2 dB, and the room adds to it. The ear's share is taken out
 * as a variance; the ± is its error.
 */
export function loudnessEvennessDb(loudness: readonly Loudness[]): Figure {
  if (loudness.length < LEAST_NOTES) return tooFewNotes(loudness.length);
  const count = loudness.length;
  const variance = mean(loudness.map(({ key }) => key.levelSdDb ** 2))!;
  return spreadWithoutNoise(
    loudness.map(({ aboveLineDb }) => aboveLineDb),
    { variance, neighbours: 'apart' },
    count - 2,
  );
}

/**
 * Thumb accent: mean level of thumb notes − mean level of the others, at the same pitch, dB: the slope over pitch is taken
 * within each group (analysis of covariance), so that a line fitted through all does not swallow part of the accent. Each key
 * counts once, with its mean level: the thumb plays few keys, and keys of a piano differ among themselves, which no number of
 * strokes averages out. ± from the scatter of the keys about both lines. In chords each thumb is compared with the other notes of its chord, which lie near it.
 */
export function thumbAccentDb(loudness: readonly Loudness[]): Figure {
  const chords = chordAccents(loudness);
  if (chords.length >= 2) {
    const sd = standardDeviation(chords)!;
    return { value: mean(chords)!, plusMinus: sd / Math.sqrt(chords.length) };
  }
  const groups = [
    keysOf(loudness.filter((note) => note.key.expected.finger === 1)),
    keysOf(loudness.filter((note) => note.key.expected.finger !== 1)),
  ].map((keys) => {
    const midi = mean(keys.map((key) => key.midi)) ?? 0;
    const levelDb = mean(keys.map((key) => key.levelDb)) ?? 0;
    const centred = keys.map((key) => ({ x: key.midi - midi, y: key.levelDb - levelDb }));
    return { count: keys.length, midi, levelDb, centred };
  });
  const [thumb, others] = [groups[0]!, groups[1]!];
  if (thumb.count < 2 || others.count < 2)
    return notMeasured('needs two keys struck by the thumb and two by others');
  const points = [...thumb.centred, ...others.centred];
  const sumXX = points.reduce((sum, { x }) => sum + x * x, 0);
  const slope = sumXX === 0 ? 0 : points.reduce((sum, { x, y }) => sum + x * y, 0) / sumXX;
  const squares = points.reduce((sum, { x, y }) => sum + (y - slope * x) ** 2, 0);
  const scatter = squares / Math.max(1, points.length - 3);
  const apart = thumb.midi - others.midi;
  const leverage = sumXX === 0 ? 0 : apart ** 2 / sumXX;
  return {
    value: thumb.levelDb - others.levelDb - slope * apart,
    plusMinus: Math.sqrt(scatter * (1 / thumb.count + 1 / others.count + leverage)),
  };
}

/** Mean level of each key struck. */
function keysOf(loudness: readonly Loudness[]): readonly { midi: number; levelDb: number }[] {
  return [...new Set(loudness.map((note) => note.key.expected.midi))].map((midi) => ({
    midi,
    levelDb: mean(loudness.filter((note) => note.key.expected.midi === midi).map((note) => note.levelDb))!,
  }));
}

/** Level of each chord's thumb less the mean of the other notes of its hand, dB: a louder hand is no louder thumb. */
function chordAccents(loudness: readonly Loudness[]): readonly number[] {
  const handOf = (note: Loudness): string => `${note.step} ${note.key.expected.hand}`;
  return [...new Set(loudness.map(handOf))].flatMap((hand) => {
    const chord = loudness.filter((note) => handOf(note) === hand);
    const thumb = chord.find((note) => note.key.expected.finger === 1);
    const others = chord.filter((note) => note !== thumb).map((note) => note.levelDb);
    return thumb === undefined || others.length === 0 ? [] : [thumb.levelDb - mean(others)!];
  });
}

export function tooFewNotes(count: number): Figure {
  return notMeasured(`needs ${LEAST_NOTES} right notes; there ${count === 1 ? 'is' : 'are'} ${count}`);
}
