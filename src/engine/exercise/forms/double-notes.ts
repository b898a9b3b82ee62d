import { DOUBLE_NOTE_FINGERINGS, doubleFingers } from '../fingering/index.ts';
import type { FingerPair } from '../fingering/index.ts';
import { fingered } from './places.ts';
import type { FingeredName, Place } from './places.ts';
import { octavesUp, scaleWays } from './runs.ts';
import { MEDIANT, STEPS_AN_OCTAVE } from './scales.ts';
import type { Part } from './types.ts';

/** The scale in thirds by one hand: the tonic with the third above it, and on. */
export const doubleThirdsPlaces = (part: Part): readonly Place[] =>
  doublePlaces(part, (names, degree) => [names[degree]!, names[degree + MEDIANT]!], 'thirds');

/** The scale in sixths by one hand: the third with the tonic above it, and on. Common practice, no source. */
export const doubleSixthsPlaces = (part: Part): readonly Place[] =>
  doublePlaces(
    part,
    (names, degree) => [names[degree + MEDIANT]!, names[degree + STEPS_AN_OCTAVE]!],
    'sixths',
  );

function doublePlaces(
  part: Part,
  pairAt: (names: readonly string[], degree: number) => readonly [string, string],
  kind: keyof typeof DOUBLE_NOTE_FINGERINGS,
): readonly Place[] {
  const { up, down } = scaleWays({ ...part, octaves: part.octaves + 1 });
  const positions: readonly FingerPair[] = DOUBLE_NOTE_FINGERINGS[kind];
  const written = (way: readonly FingeredName[]): readonly (readonly FingeredName[])[] => {
    const names = way.map(({ name }) => name);
    const octave = Array.from({ length: STEPS_AN_OCTAVE }, (_, degree) => pairAt(names, degree));
    const fingers = doubleFingers(octave, positions, part.hand);
    return Array.from({ length: STEPS_AN_OCTAVE * part.octaves + 1 }, (_, at) => {
      const degree = at % STEPS_AN_OCTAVE;
      const pair = octave[degree]!.map((name) => octavesUp(name, Math.floor(at / STEPS_AN_OCTAVE)));
      return fingered(pair, fingers[degree]!);
    });
  };
  const rising = written(up);
  const falling = written(down).toReversed();
  return [...rising.slice(0, -1), ...falling].map((keys, at) => ({ keys, turn: at === rising.length - 1 }));
}
