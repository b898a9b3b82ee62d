import { Key, Note } from 'tonal';
import { arpeggioFingers, scaleFingers } from '../fingering/index.ts';
import { fingered } from './places.ts';
import type { FingeredName, Place } from './places.ts';
import type { MinorScale } from '../types.ts';
import type { Part } from './types.ts';

export const ARPEGGIO_INTERVALS = { major: ['1P', '3M', '5P'], minor: ['1P', '3m', '5P'] } as const;

/** The tonic arpeggio up and down from `start`, the top note once. */
export function arpeggioPlaces({ key, hand, start, octaves, principle }: Part): readonly Place[] {
  const names = climb(start, ARPEGGIO_INTERVALS[key.mode], octaves);
  const up = fingered(names, arpeggioFingers({ key: key.name, hand, minorScale: null, principle }, octaves));
  return upAndDown(up, up);
}

/** The scale up and down from `start`, the top note once; the melodic minor comes down as the natural one. */
export function scalePlaces(part: Part): readonly Place[] {
  const { up, down } = scaleWays(part);
  return upAndDown(up, down);
}

/** What is played on the way up, and on the way down, both from the lowest note. */
interface Ways {
  readonly up: readonly FingeredName[];
  readonly down: readonly FingeredName[];
}

/** The scale from `start` in both ways; the melodic minor comes down as the natural one. */
export function scaleWays({ key, minorScale, hand, start, octaves, principle }: Part): Ways {
  const rising = (scale: MinorScale | null): readonly FingeredName[] =>
    fingered(
      climb(start, scaleIntervals(scale), octaves),
      scaleFingers({ key: key.name, hand, minorScale: scale, principle }, octaves),
    );
  return { up: rising(minorScale), down: rising(minorScale === 'melodic' ? 'natural' : minorScale) };
}

const intervals = new Map<MinorScale | null, readonly string[]>();

/** They are the same from every tonic; a key's other facts, which are worked out with them, take a while. */
function scaleIntervals(minorScale: MinorScale | null): readonly string[] {
  const known = intervals.get(minorScale);
  if (known !== undefined) return known;
  const found = minorScale === null ? Key.majorKey('C').intervals : Key.minorKey('C')[minorScale].intervals;
  intervals.set(minorScale, found);
  return found;
}

/** The intervals above `start`, octave after octave, and the tonic on top. */
export function climb(start: string, intervals: readonly string[], octaves: number): readonly string[] {
  const lowest = intervals.map((interval) => Note.transpose(start, interval));
  const names = Array.from({ length: octaves }, (_, octave) => lowest.map((name) => octavesUp(name, octave)));
  return [...names.flat(), octavesUp(start, octaves)];
}

/** A name with its octave number raised: "G#4" → "G#5". */
export function octavesUp(name: string, octaves: number): string {
  return name.replace(/-?\d+$/, (octave) => String(Number(octave) + octaves));
}

/** The way up, then the way down from the second note from the top; the top is fingered to suit the way down. */
export function upAndDown(up: readonly FingeredName[], down: readonly FingeredName[]): readonly Place[] {
  const path = [...up.slice(0, -1), ...[...down].reverse()];
  return path.map((key, index) => ({ keys: [key], turn: index === up.length - 1 }));
}
