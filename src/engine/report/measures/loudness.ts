import type { Learnt, PianoProfile } from '../../listen/index.ts';
import { mean } from '../../base/statistics.ts';
import { notMeasured } from './estimate.ts';
import type { Estimate, Figure } from '../types.ts';
import { lineThrough } from './line.ts';
import { spreadWithoutNoise } from './noise.ts';
import type { Strike, StruckKey } from './strikes.ts';

/** A note's level, that of its key taken out where it is known, and what is left of it about its mean or a line over pitch, dB. */
export interface Loudness {
  readonly step: number;
  readonly key: StruckKey;
  readonly levelDb: number;
  /** SD of its error: the ear's, and what is not known of its key */
  readonly levelSdDb: number;
  readonly aboveLineDb: number;
}

const LEAST_NOTES = 5;

/** A key of which so little is known is not known, ± in dB: two strikes. */
const KNOWN_DB = 1.1;

/** The right notes of one hand. */
function rightKeys(
  strikes: readonly Strike[],
): readonly { readonly step: number; readonly key: StruckKey }[] {
  return strikes.flatMap((strike) =>
    strike.notes.filter((key) => key.right).map((key) => ({ step: strike.step, key })),
  );
}

/** What is known of the level of a key; undefined: not enough. */
function keyLevel({ played }: StruckKey, piano: PianoProfile): Learnt | undefined {
  const level = piano.keys[played.midi]?.levelDb;
  return level === undefined || level.plusMinus > KNOWN_DB ? undefined : level;
}

/** A note's level, that of its key taken out where this piano is known, dB. */
export function levelDbOf(key: StruckKey, piano: PianoProfile | null): number {
  return key.played.levelDb - ((piano && keyLevel(key, piano)?.value) ?? 0);
}

/**
 * Strikes of each hand and what is known of a piano → that piano, where every key struck is known of it and its levels explain those
 * heard better than none do, a straight line over pitch taken out of both: else it is another piano, or the device has moved; null.
 */
export function pianoStruck(
  byHand: readonly { readonly strikes: readonly Strike[] }[],
  piano: PianoProfile | null,
): PianoProfile | null {
  if (piano === null) return null;
  const left = byHand.flatMap(({ strikes }) => {
    const keys = rightKeys(strikes);
    const midis = keys.map(({ key }) => key.expected.midi);
    const levels = keys.map(({ key }) => key.played.levelDb);
    const known = keys.flatMap(({ key }) => keyLevel(key, piano)?.value ?? []);
    if (known.length < keys.length) return [];
    const line = lineThrough(midis, levels);
    const own = lineThrough(
      midis,
      levels.map((level, at) => level - known[at]!),
    );
    return line === undefined || own === undefined ? [] : [{ line, own }];
  });
  const squares = (of: 'line' | 'own'): number =>
    left.reduce((sum, hand) => sum + hand[of].residuals.reduce((all, value) => all + value ** 2, 0), 0);
  return left.length === byHand.length && squares('own') < squares('line') ? piano : null;
}

/**
 * Strikes → each right note's level less that of its key, where it is this piano's (`pianoStruck`); else, null, less a straight line
 * over pitch fitted to the attempt, dB: a piano (and a room) sounds unlike at its two ends, which is not the player's doing.
 */
export function loudnessOf(strikes: readonly Strike[], piano: PianoProfile | null): readonly Loudness[] {
  const keys = rightKeys(strikes);
  const known = keys.map(({ key }) => (piano === null ? undefined : keyLevel(key, piano)));
  const levels = keys.map(({ key }) => levelDbOf(key, piano));
  const line = lineThrough(
    keys.map(({ key }) => key.expected.midi),
    levels,
  );
  const centre = mean(levels) ?? 0;
  return keys.map(({ step, key }, index) => ({
    step,
    key,
    levelDb: levels[index]!,
    levelSdDb: Math.hypot(key.levelSdDb, known[index]?.plusMinus ?? 0),
    // A swell to the top is the player's where the keys are known, and cannot be told from the piano's where they are not.
    aboveLineDb: (piano === null ? line?.residuals[index] : undefined) ?? levels[index]! - centre,
  }));
}

/**
 * What a habit of this player's fingers leaves in the levels learnt of the keys that they strike, as an error of their evenness, dB
 * (40 attempts of the development piano by players whose thumb is up to 4 dB louder).
 */
const HABIT_DB = 0.3;
/**
 * Of notes struck together the levels are drawn together, each holding some of the others' partials, so that half of the ear's
 * variance shows among them; and how much differs from room to room, dB (90 attempts of chords or both hands, development piano).
 */
const SHOWS_IN_COMPANY = 0.5;
const IN_COMPANY_DB = 0.5;

/**
 * Loudness evenness: SD of the levels about that line, dB; a change is audible from about 0.7–1.2 dB (Slade et al. 2022,
 * piano tones). Where this piano's keys are not known it is as it sounds here: they differ by some 2 dB, and the room adds to it.
 * The ear's share is taken out as a variance, and what is not known of the keys; the ± is the error of both.
 */
export function loudnessEvennessDb(loudness: readonly Loudness[], keysKnown: boolean): Figure {
  if (loudness.length < LEAST_NOTES) return tooFewNotes(loudness.length);
  const count = loudness.length;
  const steps = new Set(loudness.map(({ step }) => step)).size;
  const inCompany = steps < count;
  const heard = mean(loudness.map(({ levelSdDb }) => levelSdDb ** 2))!;
  const variance = heard * (inCompany ? SHOWS_IN_COMPANY : 1);
  const { value, plusMinus = 0 } = spreadWithoutNoise(
    loudness.map(({ aboveLineDb }) => aboveLineDb),
    { variance, neighbours: 'apart' },
    count - 2,
  );
  // Where the ear's own scatter is all that was heard, nothing is known of the player's.
  if (value === 0) return notMeasured({ notice: 'within-own-error', errorDb: Math.sqrt(variance) });
  const besidesDb = Math.hypot(keysKnown ? HABIT_DB : 0, inCompany && heard > 0 ? IN_COMPANY_DB : 0);
  return { value, plusMinus: Math.hypot(plusMinus, besidesDb) };
}

/**
 * Thumb accent: mean level of thumb notes − mean level of the others, at the same pitch, dB: the slope over pitch is taken
 * within each group (analysis of covariance), so that a line fitted through all does not swallow part of the accent. Each key
 * counts once, with its mean level: the thumb plays few keys, and keys of a piano differ among themselves, which no number of
 * strokes averages out. As it sounds here, however well the keys are known: what was learnt of a key is how it sounds under this
 * player's fingers, so that the habit would be taken for the piano's (it hid 0.9 dB of a mean accent of 1.5). ± from the scatter of the keys about both lines. In chords each thumb is compared with the other notes of its chord, which lie near it.
 */
export function thumbAccentDb(loudness: readonly Loudness[]): Figure {
  const chords = chordAccents(loudness);
  if (chords.length >= 2) {
    const value = mean(chords.map(({ accentDb }) => accentDb))!;
    const squares = chords.reduce((sum, { accentDb }) => sum + (accentDb - value) ** 2, 0);
    // The same key in two chords is one key: no number of strokes averages out what it differs by.
    const keys = new Set(chords.map(({ thumb }) => thumb)).size;
    const others = mean(chords.map((chord) => chord.others))!;
    const variance = pooled(squares, chords.length - 1, KEYS_SD_DB * Math.sqrt(1 + 1 / others));
    return { value, plusMinus: Math.sqrt(variance / keys) };
  }
  const isThumb = (note: Loudness): boolean => note.key.expected.finger === 1;
  return louderDb(loudness, isThumb, KEYS_SD_DB) ?? notMeasured({ notice: 'needs-thumb-and-others' });
}

/** Keys of one piano in one room differ by so much about a line over pitch, SD in dB: 2 of the piano's own and 1.5 of the room's … */
const KEYS_SD_DB = 2.7;
/** … which counts as much as so many keys heard: a few may agree by chance. */
const WORTH_KEYS = 8;

/** Variance of values by the sum of their squares and its degrees of freedom, and by what is usual: two estimates by their weight. */
function pooled(squares: number, freedom: number, usualSd: number | null): number {
  if (usualSd === null) return squares / freedom;
  return (squares + WORTH_KEYS * usualSd ** 2) / (freedom + WORTH_KEYS);
}

/**
 * Mean level of some notes − mean level of the others, at the same pitch, dB, each key once among either; null: fewer than two keys of
 * either. The slope over pitch is taken within each group (analysis of covariance); ± from the scatter of the keys about both lines, and
 * from how much keys usually scatter, where they are not known, dB.
 */
export function louderDb(
  loudness: readonly Loudness[],
  isOne: (note: Loudness) => boolean,
  usualSdDb: number | null = null,
): Estimate | null {
  const groups = [keysOf(loudness.filter(isOne)), keysOf(loudness.filter((note) => !isOne(note)))].map(
    (keys) => {
      const midi = mean(keys.map((key) => key.midi)) ?? 0;
      const levelDb = mean(keys.map((key) => key.levelDb)) ?? 0;
      const centred = keys.map((key) => ({ x: key.midi - midi, y: key.levelDb - levelDb }));
      return { count: keys.length, midi, levelDb, centred };
    },
  );
  const [some, others] = [groups[0]!, groups[1]!];
  if (some.count < 2 || others.count < 2) return null;
  const points = [...some.centred, ...others.centred];
  const sumXX = points.reduce((sum, { x }) => sum + x * x, 0);
  const slope = sumXX === 0 ? 0 : points.reduce((sum, { x, y }) => sum + x * y, 0) / sumXX;
  const squares = points.reduce((sum, { x, y }) => sum + (y - slope * x) ** 2, 0);
  const scatter = pooled(squares, points.length - 3, usualSdDb);
  const apart = some.midi - others.midi;
  const leverage = sumXX === 0 ? 0 : apart ** 2 / sumXX;
  return {
    value: some.levelDb - others.levelDb - slope * apart,
    plusMinus: Math.sqrt(scatter * (1 / some.count + 1 / others.count + leverage)),
  };
}

/** Mean level of each key struck. */
function keysOf(loudness: readonly Loudness[]): readonly { midi: number; levelDb: number }[] {
  return [...new Set(loudness.map((note) => note.key.expected.midi))].map((midi) => ({
    midi,
    levelDb: mean(loudness.filter((note) => note.key.expected.midi === midi).map((note) => note.levelDb))!,
  }));
}

interface ChordAccent {
  readonly accentDb: number;
  readonly thumb: number;
  readonly others: number;
}

/** Level of each chord's thumb less the mean of the other notes of its hand, dB: a louder hand is no louder thumb. */
function chordAccents(loudness: readonly Loudness[]): readonly ChordAccent[] {
  const handOf = (note: Loudness): string => `${note.step} ${note.key.expected.hand}`;
  return [...new Set(loudness.map(handOf))].flatMap((hand) => {
    const chord = loudness.filter((note) => handOf(note) === hand);
    const thumb = chord.find((note) => note.key.expected.finger === 1);
    const others = chord.filter((note) => note !== thumb).map((note) => note.levelDb);
    if (thumb === undefined || others.length === 0) return [];
    const accentDb = thumb.levelDb - mean(others)!;
    return [{ accentDb, thumb: thumb.key.expected.midi, others: others.length }];
  });
}

export function tooFewNotes(count: number): Figure {
  return notMeasured({ notice: 'needs-right-notes', needed: LEAST_NOTES, there: count });
}
